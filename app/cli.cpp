#include "app/cli.h"

#include "app/clihelp.h"
#include "app/timbercli.h"
#include "core/bench/job.h"
#include "core/bench/standing.h"
#include "core/measure/number.h"
#include "core/project/file.h"
#include "core/sheets/boardview.h"
#include "core/sheets/planjson.h"
#include "core/sheets/quotepage.h"
#include "core/sheets/ways.h"
#include "core/timber/demand.h"
#include "core/timber/worth.h"
#include "core/words/say.h"
#include "ui/document/figureplaces.h"
#include "ui/paint/export.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <ostream>
#include <string_view>

namespace kerfwright {
namespace {

/// A side of a picture beyond this takes more memory than a picture is worth (1.6 GB).
constexpr double greatestPixels = 20'000;
/// Pixels per mm.
constexpr double leastScale = 0.05;
constexpr double greatestScale = 100;

/// `end` in lower case; the text may have capitals ("A.PNG").
bool endsWith(const std::string& text, std::string_view end) {
    const auto same = [](char wanted, char c) {
        return wanted == c || (c >= 'A' && c <= 'Z' && wanted == c - 'A' + 'a');
    };
    return text.size() > end.size() && std::equal(end.rbegin(), end.rend(), text.rbegin(), same);
}

/// A project together with its proven plan, or the exit code after the fault was told.
struct Loaded {
    Project project;
    Job job;
};

std::optional<Loaded> load(const std::string& file, std::ostream& err) {
    Result<Project> project = readProject(file);
    if (!project) {
        // A fault of the disk names the file itself.
        err << "kerfwright: " << (project.fault().entry == file ? "" : file + ": ")
            << project.fault().text() << '\n';
        return {};
    }
    Result<Job> job =
        makeJob(project->board, project->woods, project->shop, project->choices, project->notation,
                {project->climate, project->glue, project->purpose, project->rates});
    if (!job) {
        err << "kerfwright: " << file << ": " << job.fault().text() << '\n';
        return {};
    }
    return Loaded{std::move(project).value(), std::move(job).value()};
}

std::string theCommands() {
    return sayList(std::array{"plan", "sheets", "quote", "picture", "check", "timber", "rack"});
}

/// Neither an option nor the name of a file: somebody meant a command.
bool looksLikeCommand(const std::string& word) {
    return !word.empty() && word.front() != '-' && word.find_first_of("./\\") == std::string::npos;
}

QString titleOf(const Project& project) {
    return QString::fromStdString(project.titles.name.empty() ? "Kerfwright" : project.titles.name);
}

/// Tells of a written file on `out`, or of what went wrong on `err`.
bool written(const std::string& path, const QByteArray& bytes, std::ostream& out,
             std::ostream& err) {
    if (bytes.isEmpty()) {
        err << "kerfwright: " << say("{1}: could not be painted.", path) << '\n';
        return false;
    }
    const QString fault = writeFileAtomically(QString::fromStdString(path), bytes);
    if (!fault.isEmpty()) {
        err << "kerfwright: " << fault.toStdString() << '\n';
        return false;
    }
    out << path << '\n';
    return true;
}

ExitCode compare(const Loaded& loaded, bool json, std::ostream& out, std::ostream& err) {
    const Project& project = loaded.project;
    const Result<Alternatives> ways =
        alternatives(project.board, project.woods, project.shop, project.choices, project.notation,
                     {project.climate, project.glue, project.purpose, project.rates});
    if (!ways) {
        err << "kerfwright: " << ways.fault().text() << '\n';
        return Problem;
    }
    out << (json ? waysJson(project, *ways) : waysText(project, *ways));
    return Done;
}

ExitCode plan(const Loaded& loaded, bool json, std::ostream& out) {
    out << (json ? planJson(loaded.project, loaded.job) : planText(loaded.project, loaded.job));
    return Done;
}

std::string severityName(Severity severity) {
    switch (severity) {
    case Severity::Danger:
        return sayIn("severity", "danger");
    case Severity::Caution:
        return sayIn("severity", "caution");
    case Severity::Note:
        break;
    }
    return sayIn("severity", "note");
}

ExitCode check(const Loaded& loaded, const std::string& file, std::ostream& out) {
    const Job& job = loaded.job;
    out << say("{1}: the plan was carried out on the virtual bench and gives the wished board "
               "({2}, {3}).",
               file, sayCount(job.steps.steps.size(), "{1} step", "{1} steps"),
               sayCount(job.plan.glueUps, "{1} glue-up", "{1} glue-ups"))
        << '\n';
    for (const Caution& caution : job.cautions) {
        out << severityName(caution.severity);
        if (!caution.steps.empty()) {
            out << ", " << whichSteps(caution);
        }
        const Standing standing = standingOf(caution, loaded.project.seenTo);
        if (standing != Standing::Open) {
            out << " (" << standingWords(standing) << ')';
        }
        out << ": " << caution.title << ". " << caution.reason << ' ' << caution.remedy << '\n';
    }
    return Done;
}

Paper paperOf(const Loaded& loaded, const Request& request) {
    return request.paper.value_or(loaded.project.notation.unit == Unit::Inches ? Paper::Letter
                                                                               : Paper::A4);
}

ExitCode writeSheets(const Loaded& loaded, const Request& request, std::ostream& out,
                     std::ostream& err) {
    const Paper paper = paperOf(loaded, request);
    const Project& project = loaded.project;
    std::optional<TimberPlan> timber;
    if (!project.timber.rack.planks.empty()) {
        Result<TimberPlan> planned = planTimber(demandOf(loaded.job.steps, project.woods),
                                                project.woods, project.shop, project.timber);
        if (!planned.ok()) {
            err << "kerfwright: " << planned.fault().text() << "\n";
            return Problem;
        }
        timber = std::move(planned).value();
    }
    const std::vector<Page> pages = sheets(project, loaded.job, paper, timber ? &*timber : nullptr);
    if (request.format == SheetFormat::Pdf) {
        const QByteArray pdf = toPdf(pages, paper, titleOf(loaded.project));
        return written(request.out, pdf, out, err) ? Done : Problem;
    }
    std::error_code fault;
    const std::filesystem::path folder(request.out);
    std::filesystem::create_directories(folder, fault);
    if (!std::filesystem::is_directory(folder)) {
        err << "kerfwright: "
            << (fault ? say("{1}: is no folder and none could be made: {2}.", request.out,
                            fault.message())
                      : say("{1}: is no folder and none could be made.", request.out))
            << '\n';
        return Problem;
    }
    int number = 0;
    for (const Page& page : pages) {
        char count[16];
        std::snprintf(count, sizeof count, "%02d-", ++number);
        const std::filesystem::path path = folder / (count + page.key + ".svg");
        const QByteArray svg =
            toSvg(page.drawing, QString::fromStdString(page.title), paperTheme());
        if (!written(path.string(), svg, out, err)) {
            return Problem;
        }
    }
    return Done;
}

/// Planks of the rack, and those to buy; strips as sawn where no layout of them can be told.
TimberCost timberOf(const Loaded& loaded) {
    const Project& project = loaded.project;
    const Result<TimberPlan> planned = planTimber(demandOf(loaded.job.steps, project.woods),
                                                  project.woods, project.shop, project.timber);
    return planned ? timberCost(*planned, project.woods, project.notation)
                   : timberAsSawn(loaded.job.totals, project.woods);
}

ExitCode writeQuote(const Loaded& loaded, const Request& request, std::ostream& out,
                    std::ostream& err) {
    const Project& project = loaded.project;
    const Quote made =
        quote(loaded.job, timberOf(loaded), project.pricing, project.notation, project.currency);
    if (request.out.empty()) {
        out << (request.json ? quoteJson(project, loaded.job, made) : quoteText(project, made));
        return Done;
    }
    if (!made.isComplete()) {
        err << "kerfwright: " << incompleteWords(made) << '\n';
    }
    const Paper paper = paperOf(loaded, request);
    const std::vector<Page> pages = request.forMaker
                                        ? reckoningPages(project, loaded.job, made, paper)
                                        : quotePages(project, loaded.job, made, paper);
    return written(request.out, toPdf(pages, paper, titleOf(project)), out, err) ? Done : Problem;
}

ExitCode writePicture(const Loaded& loaded, const Request& request, std::ostream& out,
                      std::ostream& err) {
    const Project& project = loaded.project;
    BoardViewOptions options;
    options.surround = loaded.job.surround;
    const Drawing drawing =
        drawBoard(project.board, project.woods, loaded.job.steps.extraJoints, options);
    // As a drawing the board is plain: not every program that reads SVG shows pictures in it.
    if (endsWith(request.out, ".svg")) {
        const QByteArray svg = toSvg(drawing, titleOf(project), paperTheme());
        return written(request.out, svg, out, err) ? Done : Problem;
    }
    const double longest = std::max(drawing.extent.width, drawing.extent.height);
    if (longest * request.scale > greatestPixels) {
        const Fault fault{say("Scale"),
                          say("must be at most {1} pixels per mm for this board",
                              formatFigures(greatestPixels / longest)),
                          formatFigures(request.scale)};
        err << "kerfwright: " << fault.text() << '\n';
        return Problem;
    }
    QByteArray png;
    if (request.plain) {
        png = toPng(drawing, request.scale, paperTheme());
    } else {
        const FigurePlaces places = figurePlaces(loaded.job, project.woods);
        png =
            toPng(toImage(drawing, request.scale, paperTheme(),
                          {figuredFaces(project.board, loaded.job.surround, project.woods, places),
                           project.woods}),
                  request.scale);
    }
    return written(request.out, png, out, err) ? Done : Problem;
}

}  // namespace

Understood understand(const std::vector<std::string>& arguments, std::ostream& out,
                      std::ostream& err) {
    Request request;
    std::string format = "pdf";
    std::string paper;
    std::string reader = "customer";

    CLI::App app(say("Plans patterned solid-wood boards: from the wish to the cut sheets."),
                 "kerfwright");
    beginHelp(app);
    app.set_version_flag("--version", "kerfwright " KERFWRIGHT_VERSION,
                         say("Display program version information and exit"));
    app.footer(say("Without a command the window opens.") + "\n" +
               say("Ends with 0: done, 1: the project has a problem, 2: wrong usage."));
    app.require_subcommand(0, 1);
    app.add_option("FILE", request.file, say("Project to open in the window (*.kerfwright)"));

    const std::string aboutJson = say("As JSON, for other programs");
    const std::string aboutPaper = say("a4 or letter; if not given, by the units of the project");
    const auto command = [&](const char* name, const std::string& about) {
        CLI::App* sub = app.add_subcommand(name, about);
        sub->add_option("FILE", request.file, say("Project (*.kerfwright)"))->required();
        return sub;
    };
    CLI::App* plan = command("plan", say("Write the plan: every step with every setting"));
    plan->add_flag("--json", request.json, aboutJson);
    plan->add_flag("--all", request.all, say("Instead: all ways to glue the board, side by side"));

    CLI::App* sheets = command("sheets", say("Write the cut sheets"));
    sheets->add_option("--out", request.out, say("File for PDF, folder for SVG"))->required();
    sheets->add_option("--format", format, say("pdf: one file; svg: a folder, one file a sheet"))
        ->check(CLI::IsMember({"pdf", "svg"}))
        ->capture_default_str();
    sheets->add_option("--paper", paper, aboutPaper)->check(CLI::IsMember({"a4", "letter"}));

    CLI::App* quoted = command("quote", say("Write what to ask for the board, line by line"));
    CLI::Option* asJson = quoted->add_flag("--json", request.json, aboutJson);
    CLI::Option* asPdf = quoted
                             ->add_option("--out", request.out,
                                          say("Instead: a file that ends in .pdf, to hand over"))
                             ->check([](const std::string& path) {
                                 return endsWith(path, ".pdf")
                                            ? std::string()
                                            : say("{1}: must end in {2}", path, ".pdf");
                             });
    asPdf->excludes(asJson);
    quoted->add_option("--for", reader, say("customer: the quote; maker: the reckoning behind it"))
        ->needs(asPdf)
        ->check(CLI::IsMember({"customer", "maker"}))
        ->capture_default_str();
    quoted->add_option("--paper", paper, aboutPaper)
        ->needs(asPdf)
        ->check(CLI::IsMember({"a4", "letter"}));

    CLI::App* picture = command("picture", say("Write the board from above as a picture"));
    picture->add_option("--out", request.out, say("File that ends in .png or .svg"))
        ->required()
        ->check([](const std::string& path) {
            return endsWith(path, ".png") || endsWith(path, ".svg")
                       ? std::string()
                       : say("{1}: must end in {2} or {3}", path, ".png", ".svg");
        });
    picture->add_option("--scale", request.scale, say("Pixels per mm of a PNG"))
        ->check(CLI::Range(leastScale, greatestScale))
        ->capture_default_str();
    picture->add_flag("--plain", request.plain, say("Each wood in one colour, without its figure"));

    CLI::App* check = command("check", say("Read, plan and carry out on the virtual bench"));
    const TimberCommands timber = addTimberCommands(app, request.timber, paper);
    endHelp(app);

    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
        app.parse(std::move(reversed));
    } catch (const CLI::ParseError& told) {
        const bool asked = app.exit(told, out, err) == 0;
        const auto known = [&](const std::string& word) {
            return !app.get_subcommands([&](CLI::App* sub) { return sub->get_name() == word; })
                        .empty();
        };
        if (!asked && !arguments.empty() && looksLikeCommand(arguments.front()) &&
            !known(arguments.front())) {
            err << say("“{1}” is no command; the commands are {2}; see --help.", arguments.front(),
                       theCommands())
                << '\n';
        }
        return {{}, asked ? Done : Usage};
    }

    if (!(request.scale >= leastScale)) {  // "nan" is a number to the reader of options
        err << say("{1}: must be a number", "--scale") << '\n';
        return {{}, Usage};
    }
    request.command = plan->parsed()            ? Command::Plan
                      : sheets->parsed()        ? Command::Sheets
                      : quoted->parsed()        ? Command::Quote
                      : picture->parsed()       ? Command::Picture
                      : check->parsed()         ? Command::Check
                      : timber.timber->parsed() ? Command::Timber
                      : timber.rack->parsed()   ? Command::Rack
                                                : Command::Window;
    request.format = format == "svg" ? SheetFormat::Svg : SheetFormat::Pdf;
    request.forMaker = reader == "maker";
    if (!paper.empty()) {
        request.paper = paper == "letter" ? Paper::Letter : Paper::A4;
        request.timber.paper = request.paper;
    }
    return {request, Done};
}

bool mayOpenWindow(const Request& request, bool hasDisplay, std::ostream& err) {
    std::error_code fault;
    const bool missing = !request.file.empty() && !std::filesystem::exists(request.file, fault);
    const bool command = missing && looksLikeCommand(request.file);
    // With a display the window tells of a missing file; a mistyped command needs no window.
    if (missing && (command || !hasDisplay)) {
        err << "kerfwright: "
            << (command ? say("{1}: there is no such file, and no such command; the commands are "
                              "{2}; see --help.",
                              request.file, theCommands())
                        : say("{1}: there is no such file.", request.file))
            << '\n';
        return false;
    }
    if (!hasDisplay) {
        err << "kerfwright: "
            << say("there is no display to open a window on. The commands {1} work without one; "
                   "see --help.",
                   theCommands())
            << '\n';
    }
    return hasDisplay;
}

namespace {

ExitCode carriedOut(const Request& request, std::ostream& out, std::ostream& err) {
    if (request.command == Command::Timber) {
        return carryOutTimber(request.timber, out, err);
    }
    if (request.command == Command::Rack) {
        return carryOutRack(request.timber, out, err);
    }
    const std::optional<Loaded> loaded = load(request.file, err);
    if (!loaded) {
        return Problem;
    }
    switch (request.command) {
    case Command::Plan:
        return request.all ? compare(*loaded, request.json, out, err)
                           : plan(*loaded, request.json, out);
    case Command::Sheets:
        return writeSheets(*loaded, request, out, err);
    case Command::Quote:
        return writeQuote(*loaded, request, out, err);
    case Command::Picture:
        return writePicture(*loaded, request, out, err);
    case Command::Check:
        return check(*loaded, request.file, out);
    case Command::Window:
    case Command::Timber:
    case Command::Rack:
        break;
    }
    return Usage;
}

}  // namespace

ExitCode carryOut(const Request& request, std::ostream& out, std::ostream& err) {
    const ExitCode code = carriedOut(request, out, err);
    out.flush();
    if (!out) {
        err << "kerfwright: " << say("the output could not be written.") << '\n';
        return Problem;
    }
    return code;
}

}  // namespace kerfwright

#include "app/timbercli.h"

#include "core/batch/batch.h"
#include "core/bench/largestboard.h"
#include "core/project/file.h"
#include "core/sheets/batchsheets.h"
#include "core/sheets/timbertext.h"
#include "core/timber/demand.h"
#include "core/timber/rackcsv.h"
#include "core/timber/timberwords.h"
#include "core/words/say.h"
#include "ui/paint/export.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <fstream>
#include <ostream>
#include <utility>

namespace kerfwright {
namespace {

/// 20 000 planks with all their defects stay below.
constexpr std::size_t greatestTable = 64 * 1'024 * 1'024;

void tell(std::ostream& err, const std::string& file, const Fault& fault) {
    err << "kerfwright: " << (file.empty() || fault.entry == file ? "" : file + ": ")
        << fault.text() << '\n';
}

Result<Rack> readRack(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::string bytes;
    char block[65'536];
    while (file && bytes.size() <= greatestTable) {
        file.read(block, sizeof block);
        bytes.append(block, static_cast<std::size_t>(file.gcount()));
    }
    if (!file.eof()) {
        return bytes.size() > greatestTable
                   ? Fault{path, say("must be at most {1}", "64 MiB"), sayIn("got", "more")}
                   : Fault{path, say("must be readable"),
                           say("no such file, or no right to read it")};
    }
    return rackFromCsv(bytes);
}

bool writeTable(const std::string& path, const Rack& rack, Unit unit, std::ostream& out,
                std::ostream& err) {
    const QString fault = writeFileAtomically(QString::fromStdString(path),
                                              QByteArray::fromStdString(rackToCsv(rack, unit)));
    if (!fault.isEmpty()) {
        err << "kerfwright: " << fault.toStdString() << '\n';
        return false;
    }
    out << path << '\n';
    return true;
}

/// All projects, the first with the rack that was asked for; false after the fault was told.
bool load(const TimberRequest& request, std::vector<Project>& projects, std::ostream& err) {
    for (const std::string& file : request.files) {
        Result<Project> project = readProject(file);
        if (!project) {
            tell(err, file, project.fault());
            return false;
        }
        projects.push_back(std::move(project).value());
    }
    if (!request.rackIn.empty()) {
        Result<Rack> rack = readRack(request.rackIn);
        if (!rack) {
            tell(err, request.rackIn, rack.fault());
            return false;
        }
        projects.front().timber.rack = std::move(rack).value();
    }
    return true;
}

/// In a column of its own.
std::string answer(bool yes) {
    constexpr std::size_t width = 5;
    std::string word = yes ? say("yes") : say("no");
    word.resize(std::max(width, word.size() + 1), ' ');
    return word;
}

ExitCode tellEach(std::vector<Project> projects, std::ostream& out) {
    const Timber timber = projects.front().timber;
    for (Project& project : projects) {
        const std::string name = project.titles.name;
        const std::vector<Wood> woods = project.woods;
        const Notation notation = project.notation;
        project.timber = timber;
        project.timber.pins.clear();
        const Result<Batch> batch = planBatch({std::move(project)});
        if (!batch) {
            out << answer(false) << name << "\n       " << batch.fault().text() << '\n';
            continue;
        }
        out << answer(batch->timber.layout.isComplete()) << name << '\n';
        for (const std::string& words : shortageWords(batch->timber, woods, notation)) {
            out << "       " << words << '\n';
        }
    }
    return Done;
}

ExitCode tellLargest(const Project& project, Growth growth, std::ostream& out, std::ostream& err) {
    const bool inches = project.notation.unit == Unit::Inches;
    const std::vector<GrownField> fields =
        grownFields(project.board.field, project.recipe, growth,
                    inches ? Length::inch(1, 16) : Length::mm(1), project.notation);
    const Result<LargestBoard> largest = largestBoard(
        project.board, fields, project.woods, project.shop, project.choices, project.notation,
        {project.climate, project.glue, project.purpose, project.rates}, project.timber);
    if (!largest) {
        tell(err, "", largest.fault());
        return Problem;
    }
    out << say("The largest board from this rack has {1}: a field of {2} × {3}.",
               largest->field.words, formatBare(largest->field.field.width(), project.notation),
               format(largest->field.field.height(), project.notation))
        << '\n'
        << (largest->isSure ? say("The next size is proven not to fit.")
                            : say("The next size was not found to fit, which is no proof."))
        << '\n';
    return Done;
}

}  // namespace

TimberCommands addTimberCommands(CLI::App& app, TimberRequest& request, std::string& paper) {
    TimberCommands added;
    added.timber = app.add_subcommand(
        "timber", say("Lay the strips on the planks of the rack, and say what to buy"));
    added.timber
        ->add_option("FILE", request.files,
                     say("Projects (*.kerfwright); several are planned together, with the shop and "
                         "the rack of the first"))
        ->required();
    added.timber->add_option("--rack", request.rackIn,
                             say("Table of planks (CSV) instead of the rack of the first project"));
    added.timber->add_option("--rack-after", request.rackAfter,
                             say("Write the rack as it is once all is sawn, as a table (CSV)"));
    added.timber->add_option("--out", request.out, say("Write one set of sheets, as PDF"));
    added.timber
        ->add_option("--paper", paper,
                     say("a4 or letter; if not given, by the units of the project"))
        ->check(CLI::IsMember({"a4", "letter"}));
    CLI::Option* largest =
        added.timber
            ->add_option("--largest", request.growth,
                         say("Instead: the largest board from this rack, by the size of its "
                             "squares or by more rows and columns"))
            ->check(CLI::IsMember({"squares", "cells"}));
    CLI::Option* each = added.timber->add_flag(
        "--each", request.each,
        say("Instead: which of the boards the rack suffices for, one by one"));
    added.timber->add_flag("--json", request.json, say("As JSON, for other programs"));
    largest->excludes(each);

    added.rack = app.add_subcommand("rack", say("Exchange the rack of a project as a table (CSV)"));
    added.rack->add_option("FILE", request.files, say("Project (*.kerfwright)"))
        ->required()
        ->expected(1);
    CLI::Option* in = added.rack->add_option(
        "--import", request.rackIn, say("Put the planks of this table in the place of the rack"));
    CLI::Option* to =
        added.rack->add_option("--export", request.rackOut, say("Write the rack to this table"));
    in->excludes(to);
    added.rack->callback([&request] {
        if (request.rackIn.empty() && request.rackOut.empty()) {
            throw CLI::RequiredError(say("{1} or {2}", "--import", "--export"));
        }
    });
    return added;
}

ExitCode carryOutTimber(const TimberRequest& request, std::ostream& out, std::ostream& err) {
    std::vector<Project> projects;
    if (!load(request, projects, err)) {
        return Problem;
    }
    if (!request.growth.empty()) {
        return tellLargest(projects.front(),
                           request.growth == "cells" ? Growth::Cells : Growth::Squares, out, err);
    }
    if (request.each) {
        return tellEach(std::move(projects), out);
    }
    const Unit unit = projects.front().notation.unit;
    const Result<Batch> batch = planBatch(std::move(projects));
    if (!batch) {
        tell(err, "", batch.fault());
        return Problem;
    }
    if (!request.rackAfter.empty() &&
        !writeTable(request.rackAfter, rackAfter(batch->timber), unit, out, err)) {
        return Problem;
    }
    if (!request.out.empty()) {
        const Paper paper =
            request.paper.value_or(unit == Unit::Inches ? Paper::Letter : Paper::A4);
        const std::string& name = batch->boards.front().project.titles.name;
        const QByteArray pdf = toPdf(batchSheets(*batch, paper), paper,
                                     QString::fromStdString(name.empty() ? "Kerfwright" : name));
        const QString fault = writeFileAtomically(QString::fromStdString(request.out), pdf);
        if (pdf.isEmpty() || !fault.isEmpty()) {
            err << "kerfwright: "
                << (pdf.isEmpty() ? say("{1}: could not be painted.", request.out)
                                  : fault.toStdString())
                << '\n';
            return Problem;
        }
        out << request.out << '\n';
        return Done;
    }
    if (request.json || request.rackAfter.empty()) {
        out << (request.json ? timberJson(*batch) : timberText(*batch));
    }
    return Done;
}

ExitCode carryOutRack(const TimberRequest& request, std::ostream& out, std::ostream& err) {
    std::vector<Project> projects;
    if (!load(request, projects, err)) {
        return Problem;
    }
    const Project& project = projects.front();
    const std::string& file = request.files.front();
    if (!request.rackOut.empty()) {
        return writeTable(request.rackOut, project.timber.rack, project.notation.unit, out, err)
                   ? Done
                   : Problem;
    }
    const Result<std::size_t> written = writeProject(project, file);
    if (!written) {
        tell(err, file, written.fault());
        return Problem;
    }
    out << sayCount(project.timber.rack.planks.size(), "{2}: {1} plank on the rack.",
                    "{2}: {1} planks on the rack.", file)
        << '\n';
    return Done;
}

}  // namespace kerfwright

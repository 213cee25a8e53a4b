#include "app/clihelp.h"

#include "core/words/say.h"

#include <CLI/CLI.hpp>

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace kerfwright {
namespace {

/// The reader puts its complaints together itself and hands out nothing but the sentence. Longer
/// ones before those that are part of them.
constexpr std::array complaints = {
    noted("The following arguments were not expected: {1}"),
    noted("The following argument was not expected: {1}"),
    noted("Could not convert: {1} = {2}"),
    noted("{1}: Value {2} not in range {3} to {4}"),
    noted("{1}: {2} not in {3}"),
    noted("{1}: {2} required {3} missing"),
    noted("{1} is required"),
    noted("{1} requires {2}"),
    noted("{1} excludes {2}"),
};

using Parts = std::array<std::string, 4>;

/// What stands in the places of the sentence; nothing where it is another sentence.
std::optional<Parts> partsOf(std::string_view told, std::string_view sentence) {
    Parts parts;
    for (std::size_t number = 0; number < parts.size(); ++number) {
        const std::size_t place = sentence.find('{');
        if (!told.starts_with(sentence.substr(0, place))) {
            return std::nullopt;
        }
        if (place == std::string_view::npos) {
            break;
        }
        told.remove_prefix(place);
        sentence.remove_prefix(place + 3);
        const std::string_view next = sentence.substr(0, sentence.find('{'));
        const std::size_t end = next.empty() ? told.size() : told.find(next);
        if (end == std::string_view::npos) {
            return std::nullopt;
        }
        parts[number] = told.substr(0, end);
        told.remove_prefix(end);
    }
    return told == sentence ? std::optional(parts) : std::nullopt;
}

std::string complaint(const std::string& told) {
    for (const char* sentence : complaints) {
        if (const std::optional<Parts> parts = partsOf(told, sentence)) {
            const auto& [first, second, third, fourth] = *parts;
            return say(sentence, first, second, third, fourth);
        }
    }
    return told;
}

}  // namespace

void beginHelp(CLI::App& app) {
    app.set_help_flag("-h,--help", say("Print this help message and exit"));
    app.failure_message([](const CLI::App*, const CLI::Error& error) {
        return complaint(error.what()) + "\n" +
               say("Run with {1} for more information.", "--help") + "\n";
    });
    const auto words = app.get_formatter();
    words->label("Usage", sayIn("help", "Usage"));
    words->label("Positionals", sayIn("help", "Positionals"));
    words->label("OPTIONS", sayIn("help", "OPTIONS"));
    words->label("SUBCOMMAND", sayIn("help", "SUBCOMMAND"));
    words->label("REQUIRED", sayIn("help", "REQUIRED"));
    words->label("Needs", sayIn("help", "Needs"));
    words->label("Excludes", sayIn("help", "Excludes"));
}

void endHelp(CLI::App& app) {
    for (CLI::Option* option : app.get_options()) {
        option->group(sayIn("help", "Options"));
    }
    for (CLI::App* command : app.get_subcommands({})) {
        command->group(sayIn("help", "Subcommands"));
        endHelp(*command);
    }
}

}  // namespace kerfwright

// What the reader of the command line says by itself, in the maker's language.
#pragma once

namespace CLI {
class App;
}

namespace kerfwright {

/// Before anything is added to `app`.
void beginHelp(CLI::App& app);
/// Once all commands and options are added.
void endHelp(CLI::App& app);

}  // namespace kerfwright

// The commands that are about timber.
#pragma once

#include "app/cli.h"

#include <iosfwd>
#include <string>

namespace CLI {
class App;
}

namespace kerfwright {

struct TimberCommands {
    CLI::App* timber = nullptr;
    CLI::App* rack = nullptr;
};
/// Adds both; they fill `request` and `paper` when they are parsed.
TimberCommands addTimberCommands(CLI::App& app, TimberRequest& request, std::string& paper);

ExitCode carryOutTimber(const TimberRequest& request, std::ostream& out, std::ostream& err);
ExitCode carryOutRack(const TimberRequest& request, std::ostream& out, std::ostream& err);

}  // namespace kerfwright

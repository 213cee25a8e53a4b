// The command line, apart from the process it runs in, so that tests call it like any function.
#pragma once

#include "core/sheets/sheets.h"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace kerfwright {

/// What a call of the program ends with.
enum ExitCode : int {
    Done = 0,
    Problem = 1,  ///< with the project, the disk or the display; told on the error stream
    Usage = 2,    ///< the call itself is wrong
};

enum class Command { Window, Plan, Sheets, Quote, Picture, Check, Timber, Rack };
enum class SheetFormat { Pdf, Svg };

/// What `timber` and `rack` are called with.
struct TimberRequest {
    std::vector<std::string> files;  ///< projects; of `rack` one
    std::string rackIn;              ///< a table that stands for the rack of the first project
    std::string rackOut;             ///< of `rack`: where the rack goes to
    std::string rackAfter;           ///< where the rack goes to as it is once all is sawn
    std::string out;                 ///< one set of sheets, as PDF
    std::string growth;              ///< "squares" or "cells": the largest board; else empty
    bool each = false;               ///< every board by itself from the whole rack
    bool json = false;
    std::optional<Paper> paper;
};

/// A call that was understood.
struct Request {
    Command command = Command::Window;
    std::string file;  ///< the project; may be empty for `Command::Window`
    std::string out;   ///< a file, or a folder for sheets as SVG
    bool json = false;
    bool all = false;       ///< of a plan: all ways to glue the board
    bool forMaker = false;  ///< of a quote as PDF: the reckoning instead of what is handed over
    SheetFormat format = SheetFormat::Pdf;
    std::optional<Paper>
        paper;           ///< empty: A4 for a project in millimetres, Letter for one in inches
    double scale = 4;    ///< pixels per mm of a PNG
    bool plain = false;  ///< of a PNG: without the figure of the woods
    TimberRequest timber = {};

    /// Whether fonts and painters are needed, and with them a QGuiApplication.
    bool paints() const {
        return command == Command::Sheets || command == Command::Picture ||
               (command == Command::Quote && !out.empty()) ||
               (command == Command::Timber && !timber.out.empty());
    }
};

/// Either a request, or the exit code of a call that ends here (help, version, wrong usage); what
/// is to be said about it has been said.
struct Understood {
    std::optional<Request> request;
    ExitCode code = Done;
};

/// `arguments` without the program's name, in UTF-8.
Understood understand(const std::vector<std::string>& arguments, std::ostream& out,
                      std::ostream& err);

/// Whether a window can be opened for `Command::Window`; what keeps it from that is told on `err`,
/// a file that is not there before a display that is not.
bool mayOpenWindow(const Request& request, bool hasDisplay, std::ostream& err);

/// Carries out every command but `Command::Window`. A request that paints needs a QGuiApplication.
ExitCode carryOut(const Request& request, std::ostream& out, std::ostream& err);

}  // namespace kerfwright

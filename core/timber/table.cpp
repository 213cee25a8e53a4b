#include "core/timber/table.h"

#include "core/words/say.h"

#include <algorithm>

namespace kerfwright {
namespace {

char separatorOf(std::string_view text) {
    bool inQuotes = false;
    bool semicolon = false;
    for (const char mark : text) {
        if (mark == '"') {
            inQuotes = !inQuotes;
        } else if (!inQuotes && mark == '\n') {
            break;
        } else if (!inQuotes && mark == '\t') {
            return '\t';
        } else if (!inQuotes && mark == ';') {
            semicolon = true;
        }
    }
    return semicolon ? ';' : ',';
}

bool isEmpty(const TableRow& row) {
    return std::all_of(row.fields.begin(), row.fields.end(), [](const std::string& field) {
        return field.find_first_not_of(" \t") == std::string::npos;
    });
}

}  // namespace

Result<std::vector<TableRow>> readTable(std::string_view text) {
    if (text.substr(0, 3) == "\xEF\xBB\xBF") {
        text.remove_prefix(3);
    }
    const char separator = separatorOf(text);
    std::vector<TableRow> rows;
    std::size_t line = 1;
    for (std::size_t i = 0; i < text.size();) {
        TableRow row{line, {}};
        for (bool inRow = true; inRow;) {
            std::string field;
            const std::string where = say("Line {1}, column {2}", line, row.fields.size() + 1);
            if (i < text.size() && text[i] == '"') {
                for (++i;; ++i) {
                    if (i == text.size()) {
                        return Fault{where, say("must close its quotes"),
                                     say("the end of the table")};
                    }
                    if (text[i] == '"' && (i + 1 == text.size() || text[i + 1] != '"')) {
                        ++i;
                        break;
                    }
                    line += text[i] == '\n' ? 1u : 0u;
                    i += text[i] == '"' ? 1u : 0u;
                    field += text[i];
                }
                if (i < text.size() && text[i] != separator && text[i] != '\n' && text[i] != '\r') {
                    return Fault{where, say("must end where its quotes close"),
                                 field + std::string(1, text[i])};
                }
            }
            while (i < text.size() && text[i] != separator && text[i] != '\n') {
                if (text[i] != '\r' || (i + 1 < text.size() && text[i + 1] != '\n')) {
                    field += text[i];
                }
                ++i;
            }
            row.fields.push_back(std::move(field));
            inRow = i < text.size() && text[i] == separator;
            ++i;
        }
        ++line;
        if (!isEmpty(row)) {
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

std::string quoted(const std::string& field, char separator) {
    const bool plain = field.find_first_of("\"\n\r") == std::string::npos &&
                       field.find(separator) == std::string::npos &&
                       (field.empty() || (field.front() != ' ' && field.back() != ' '));
    if (plain) {
        return field;
    }
    std::string text = "\"";
    for (const char mark : field) {
        text += mark;
        if (mark == '"') {
            text += '"';
        }
    }
    return text + "\"";
}

}  // namespace kerfwright

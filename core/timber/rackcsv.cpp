#include "core/timber/rackcsv.h"

#include "core/measure/number.h"
#include "core/timber/table.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <optional>
#include <set>

namespace kerfwright {
namespace {

enum Column { Wood, Thickness, Width, Length_, Label, Count, Price, IsOffcut, Defects, Note };
constexpr std::size_t columns = 10;
constexpr std::size_t required = 4;
constexpr std::array<std::string_view, columns> names = {
    "wood", "thickness", "width", "length", "label", "count", "price", "offcut", "defects", "note"};
constexpr std::size_t mostAlike = 10'000;

bool hasUnit(std::size_t column) {
    return column == Thickness || column == Width || column == Length_ || column == Defects;
}

struct Heading {
    std::optional<std::size_t> field;  ///< where it stands in a row
    Notation notation;
};
using Headings = std::array<Heading, columns>;

std::string placed(std::size_t line, std::size_t field, std::string_view name) {
    return say("Line {1}, column {2} ({3})", line, field + 1, name);
}

std::size_t columnOf(PlankEntry entry) {
    switch (entry) {
    case PlankEntry::Wood:
        return Wood;
    case PlankEntry::Thickness:
        return Thickness;
    case PlankEntry::Width:
        return Width;
    case PlankEntry::Length:
        return Length_;
    case PlankEntry::Price:
        return Price;
    case PlankEntry::Defects:
        break;
    }
    return Defects;
}

/// "Width (mm)" to "width" and "mm".
void divide(const std::string& heading, std::string& name, std::string& unit) {
    std::string* into = &name;
    for (const char mark : heading) {
        if (mark == ' ' || mark == '(' || mark == '[' || mark == ')' || mark == ']') {
            into = name.empty() ? &name : &unit;
        } else {
            *into += mark >= 'A' && mark <= 'Z' ? static_cast<char>(mark - 'A' + 'a') : mark;
        }
    }
}

Result<Headings> readHeadings(const TableRow& row) {
    Headings headings;
    for (std::size_t field = 0; field < row.fields.size(); ++field) {
        std::string name;
        std::string unit;
        divide(row.fields[field], name, unit);
        const auto found = std::find(names.begin(), names.end(), name);
        const std::string where = placed(row.line, field, row.fields[field]);
        if (found == names.end()) {
            return Fault{where,
                         say("must be one of {1}", "wood, thickness, width, length, label, count, "
                                                   "price, offcut, defects, note"),
                         row.fields[field]};
        }
        const auto column = static_cast<std::size_t>(found - names.begin());
        Heading& heading = headings[column];
        if (heading.field) {
            return Fault{where, say("must stand once"), sayIn("got", "twice")};
        }
        if (hasUnit(column) ? unit != "mm" && unit != "in" : !unit.empty()) {
            return Fault{where,
                         hasUnit(column) ? say("must name its unit, mm or in")
                                         : say("must have no unit"),
                         unit.empty() ? sayIn("got", "none") : unit};
        }
        heading.field = field;
        heading.notation = unit == "in" ? Notation::inches() : Notation::millimetres(6);
    }
    for (std::size_t column = 0; column < required; ++column) {
        if (!headings[column].field) {
            return Fault{say("Line {1}", row.line),
                         say("must have a column \"{1}\"", names[column]), sayIn("got", "none")};
        }
    }
    return headings;
}

std::string trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) {
        return {};
    }
    return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

std::vector<std::string> parted(std::string_view text, char mark) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find(mark, from), text.size());
        parts.push_back(trimmed(text.substr(from, to - from)));
        from = to + 1;
    }
    return parts;
}

class RowReader {
public:
    RowReader(const Headings& headings, const TableRow& row)
        : headings_(headings)
        , row_(row) {}

    std::optional<Fault> read(Plank& plank, std::size_t& alike) {
        plank.wood = text(Wood);
        plank.thickness = length(Thickness);
        plank.width = length(Width);
        plank.length = length(Length_);
        plank.label = text(Label);
        plank.note = text(Note);
        alike = count();
        if (const std::string price = text(Price); !price.empty()) {
            const Result<std::int64_t> money = parseMoney(price, where(Price));
            plank.price = keep(money, std::int64_t{0});
        }
        const std::string offcut = text(IsOffcut);
        if (offcut == "yes") {
            plank.isOffcut = true;
        } else if (!offcut.empty() && offcut != "no") {
            complain({where(IsOffcut), say("must be {1} or {2}", "yes", "no"), offcut});
        }
        defects(plank);
        if (!fault_) {
            check(plank);
        }
        return fault_;
    }

private:
    std::string where(std::size_t column) const {
        const Heading& heading = headings_[column];
        return placed(row_.line, heading.field.value_or(0), names[column]);
    }
    std::string text(std::size_t column) const {
        const Heading& heading = headings_[column];
        return heading.field && *heading.field < row_.fields.size()
                   ? trimmed(row_.fields[*heading.field])
                   : std::string();
    }
    void complain(Fault fault) {
        if (!fault_) {
            fault_ = std::move(fault);
        }
    }
    template <class Value>
    Value keep(const Result<Value>& result, Value otherwise) {
        if (!result) {
            complain(result.fault());
        }
        return result ? *result : otherwise;
    }
    Length read(const std::string& entry, std::size_t column) {
        const Result<Reading> reading = parse(entry, headings_[column].notation, where(column));
        return keep(reading, Reading{}).length;
    }
    Length length(std::size_t column) { return read(text(column), column); }

    std::size_t count() {
        const std::string entry = text(Count);
        if (entry.empty()) {
            return 1;
        }
        const std::optional<double> number = parseNumber(entry);
        if (!number || *number < 1 || *number > static_cast<double>(mostAlike) ||
            *number != static_cast<double>(static_cast<std::size_t>(*number))) {
            complain({where(Count), say("must be a whole number from 1 to {1}", mostAlike), entry});
            return 1;
        }
        return static_cast<std::size_t>(*number);
    }

    void defects(Plank& plank) {
        const std::string all = text(Defects);
        if (all.empty()) {
            return;
        }
        for (const std::string& one : parted(all, '|')) {
            const std::vector<std::string> sizes = parted(one, ';');
            if (sizes.size() != 4) {
                complain({where(Defects),
                          say("must be {1} with bars between", "\"x; y; length; width\""), one});
                return;
            }
            plank.defects.push_back({read(sizes[0], Defects), read(sizes[1], Defects),
                                     read(sizes[2], Defects), read(sizes[3], Defects)});
        }
    }

    /// The rules of a plank, told at the column that breaks them.
    void check(const Plank& plank) {
        for (const PlankFault& fault : plankFaults(plank, headings_[Length_].notation)) {
            const std::string column = where(columnOf(fault.entry));
            complain({fault.defect == 0 ? column : say("{1}, defect {2}", column, fault.defect),
                      fault.rule, fault.value});
        }
    }

    const Headings& headings_;
    const TableRow& row_;
    std::optional<Fault> fault_;
};

}  // namespace

Result<Rack> rackFromCsv(std::string_view text) {
    const Result<std::vector<TableRow>> table = readTable(text);
    if (!table) {
        return table.fault();
    }
    if (table->empty()) {
        return Fault{say("Line {1}", 1), say("must name the columns"), sayIn("got", "nothing")};
    }
    const Result<Headings> headings = readHeadings(table->front());
    if (!headings) {
        return headings.fault();
    }
    Rack rack;
    std::set<std::string> labels;
    for (std::size_t i = 1; i < table->size(); ++i) {
        const TableRow& row = (*table)[i];
        const std::size_t named = table->front().fields.size();
        if (row.fields.size() > named) {
            return Fault{say("Line {1}, column {2}", row.line, named + 1),
                         say("must not stand beyond the headings"), row.fields[named]};
        }
        Plank plank;
        std::size_t alike = 1;
        if (const std::optional<Fault> fault = RowReader(*headings, row).read(plank, alike)) {
            return *fault;
        }
        if (plank.label.empty()) {
            plank.label = "P" + std::to_string(i);
        }
        const std::string label = plank.label;
        for (std::size_t one = 1; one <= alike; ++one) {
            plank.label = alike == 1 ? label : label + "-" + std::to_string(one);
            if (!labels.insert(plank.label).second) {
                return Fault{placed(row.line, (*headings)[Label].field.value_or(0), "label"),
                             say("must be on one plank only"), plank.label};
            }
            rack.planks.push_back(plank);
        }
        if (rack.planks.size() > RackLimits::planks) {
            return Fault{say("Line {1}", row.line),
                         say("must not take the rack beyond {1} planks", RackLimits::planks),
                         std::to_string(rack.planks.size())};
        }
    }
    return rack;
}

std::string rackToCsv(const Rack& rack, Unit unit) {
    const std::string in = unit == Unit::Inches ? " in" : " mm";
    std::string text = "label;wood;thickness" + in + ";width" + in + ";length" + in +
                       ";price;offcut;defects" + in + ";note\n";
    // Off the inches' grid a length goes over in millimetres, which hold every nanometre.
    const auto exact = [unit](Length length) {
        if (unit == Unit::Inches) {
            const Written written = write(length, Notation::inches());
            return written.rounded ? format(length, Notation::millimetres(6), DecimalMark::Point)
                                   : formatBare(length, Notation::inches(), DecimalMark::Point);
        }
        return formatBare(length, Notation::millimetres(6), DecimalMark::Point);
    };
    for (const Plank& plank : rack.planks) {
        std::string defects;
        for (const Defect& defect : plank.defects) {
            defects += (defects.empty() ? "" : " | ") + exact(defect.x) + "; " + exact(defect.y) +
                       "; " + exact(defect.length) + "; " + exact(defect.width);
        }
        const std::array<std::string, 9> fields = {
            plank.label,
            plank.wood,
            exact(plank.thickness),
            exact(plank.width),
            exact(plank.length),
            plank.price > 0 ? formatMoney(plank.price, DecimalMark::Point) : std::string(),
            plank.isOffcut ? "yes" : "no",
            defects,
            plank.note};
        for (std::size_t i = 0; i < fields.size(); ++i) {
            text += (i == 0 ? "" : ";") + quoted(fields[i], ';');
        }
        text += '\n';
    }
    return text;
}

}  // namespace kerfwright

#include "tests/core/timber/instances.h"

#include "tests/source.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <functional>
#include <map>
#include <sstream>

namespace kerfwright::timbertest {
namespace {

constexpr Length mm(std::int64_t count) {
    return Length::mm(count);
}

using Row = std::map<std::string, std::string>;

std::ifstream opened(const std::string& path) {
    return std::ifstream(sourceFolder() / "tests/core/timber/data" / path);
}

/// Rows of a plain table by its headings; empty where there is no such file.
std::vector<Row> rowsOf(const std::string& path) {
    std::ifstream in = opened(path);
    std::vector<Row> rows;
    std::vector<std::string> headings;
    for (std::string line; std::getline(in, line);) {
        std::vector<std::string> fields;
        std::istringstream text(line);
        for (std::string field; std::getline(text, field, ',');) {
            fields.push_back(field);
        }
        if (headings.empty()) {
            headings = fields;
            continue;
        }
        Row row;
        for (std::size_t i = 0; i < fields.size() && i < headings.size(); ++i) {
            row[headings[i]] = fields[i];
        }
        rows.push_back(row);
    }
    return rows;
}

std::int64_t number(const Row& row, const std::string& name, std::int64_t otherwise = 0) {
    const auto found = row.find(name);
    return found == row.end() ? otherwise : std::stoll(found->second);
}

constexpr std::int64_t thickness = 26;

void addPlank(Instance& instance, std::int64_t length, std::int64_t width, std::int64_t price) {
    const std::string label = "P" + std::to_string(instance.rack.planks.size() + 1);
    instance.rack.planks.push_back({label, "oak", mm(thickness), mm(width), mm(length), {}, price});
}

void addStrips(Instance& instance, std::int64_t length, std::int64_t width, std::int64_t count) {
    const std::string label =
        std::string(1, static_cast<char>('A' + instance.demand.strips.size() % 26)) +
        std::to_string(instance.demand.strips.size() / 26 + 1);
    instance.demand.strips.push_back(
        {label, "oak", mm(thickness), mm(width), mm(length), static_cast<int>(count), false});
}

/// Planks, defects and strips of a folder in the tables' common form.
void addTables(Instance& instance, const std::string& prefix, std::int64_t trims) {
    for (const Row& row : rowsOf(prefix + "bins.csv")) {
        const std::int64_t length = number(row, "WIDTH");
        const std::int64_t width = number(row, "HEIGHT");
        addPlank(instance, length - trims, width - trims, length * width);
    }
    for (const Row& row : rowsOf(prefix + "defects.csv")) {
        Plank& plank = instance.rack.planks[static_cast<std::size_t>(number(row, "BIN"))];
        plank.defects.push_back({mm(number(row, "X")), mm(number(row, "Y")),
                                 mm(number(row, "WIDTH")), mm(number(row, "HEIGHT"))});
    }
    for (const Row& row : rowsOf(prefix + "items.csv")) {
        addStrips(instance, number(row, "WIDTH"), number(row, "HEIGHT"), number(row, "COPIES", 1));
    }
}

/// Chance from a seed; multiplier and increment of Knuth's MMIX generator.
class Dice {
public:
    explicit Dice(std::uint64_t seed)
        : state_(seed) {}
    /// From `least` to `greatest`, both included.
    std::int64_t roll(std::int64_t least, std::int64_t greatest) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return least + static_cast<std::int64_t>((state_ >> 33) %
                                                 static_cast<std::uint64_t>(greatest - least + 1));
    }

private:
    std::uint64_t state_;
};

}  // namespace

Instance boards(const std::string& name) {
    Instance instance;
    instance.name = name;
    addTables(instance, "boards/" + name + "_", 0);
    instance.rules.kerf = mm(3);
    return instance;
}

Instance guillotine(const std::string& folder) {
    Instance instance;
    instance.name = folder;
    // The case with trims has 2 on the left and below and 3 on the right and above: a plank that is
    // 1 smaller, with 2 all round.
    const bool trims = folder == "2nvo_trims";
    addTables(instance, "guillotine/" + folder + "/", trims ? 1 : 0);
    instance.rules.endTrim = instance.rules.edgeTrim = mm(trims ? 2 : 0);
    return instance;
}

Instance textbook(const std::string& example) {
    Instance instance;
    instance.name = example;
    std::int64_t stock = 0;
    std::int64_t total = 0;
    for (const Row& row : rowsOf("onedimensional/cutting_stock_1d.csv")) {
        if (row.at("example") == example) {
            stock = number(row, "stock");
            addStrips(instance, number(row, "width"), 10, number(row, "demand"));
            total += number(row, "width") * number(row, "demand");
        }
    }
    // A sixth more than the timber alone would take.
    for (std::int64_t i = 0; stock > 0 && i < total * 7 / (6 * stock); ++i) {
        addPlank(instance, stock, 10, 1);
    }
    for (const Row& row : rowsOf("onedimensional/cutting_stock_1d_optima.csv")) {
        if (row.at("example") == example) {
            instance.optimum = number(row, "optimal_rolls");
        }
    }
    return instance;
}

std::vector<Instance> binPacking() {
    std::ifstream in = opened("onedimensional/binpack1.txt");
    std::size_t count = 0;
    in >> count;
    std::vector<Instance> all(count);
    for (Instance& instance : all) {
        std::int64_t capacity = 0;
        int items = 0;
        in >> instance.name >> capacity >> items >> instance.optimum;
        std::map<std::int64_t, int, std::greater<>> sizes;
        for (int i = 0; i < items; ++i) {
            std::int64_t size = 0;
            in >> size;
            ++sizes[size];
            addPlank(instance, capacity, 10, 1);
        }
        for (const auto& [size, times] : sizes) {
            addStrips(instance, size, 10, times);
        }
    }
    return all;
}

Instance mixed(std::uint64_t seed, int planks, int strips, int defects) {
    Instance instance;
    instance.name = "mixed";
    instance.rules.kerf = Length::um(3200);
    Dice dice(seed);
    for (int i = 0; i < planks; ++i) {
        addPlank(instance, dice.roll(1500, 3200), dice.roll(110, 260), 0);
    }
    for (int i = 0; i < defects; ++i) {
        Plank& plank = instance.rack.planks[static_cast<std::size_t>(dice.roll(0, planks - 1))];
        const std::int64_t length = dice.roll(15, 60);
        const std::int64_t width = dice.roll(15, 50);
        const std::int64_t x = dice.roll(0, plank.length.nm() / 1'000'000 - length);
        const std::int64_t y = dice.roll(0, plank.width.nm() / 1'000'000 - width);
        plank.defects.push_back({mm(x), mm(y), mm(length), mm(width)});
    }
    constexpr int kinds = 8;
    for (int i = 0; i < kinds; ++i) {
        addStrips(instance, dice.roll(30, 80) * 10, dice.roll(24, 60),
                  strips / kinds + (i < strips % kinds ? 1 : 0));
    }
    return instance;
}

Instance measured() {
    return mixed(260, 30, 260, 60);
}

Instance planted(std::uint64_t seed, int planks) {
    // With their kerf of 3 mm all lengths are multiples of 50 mm and all widths of 11 mm, so that
    // sections and strips can be drawn until nothing is left.
    constexpr std::array<std::int64_t, 4> lengths = {7, 9, 11, 16};
    constexpr std::array<std::int64_t, 3> widths = {3, 4, 5};
    Instance instance;
    instance.name = "planted " + std::to_string(planks);
    instance.rules.kerf = mm(3);
    Dice dice(seed);
    std::map<std::pair<std::int64_t, std::int64_t>, std::int64_t> counts;
    std::int64_t waste = 0;
    for (int i = 0; i < planks; ++i) {
        const std::int64_t width = dice.roll(10, 22);
        const std::int64_t sections = dice.roll(3, 6);
        std::int64_t length = 0;
        // One plank in ten has a stretch that is good for nothing.
        const std::int64_t bad = i % 10 == 3 ? dice.roll(0, sections - 1) : -1;
        std::int64_t badFrom = -1;
        for (std::int64_t section = 0; section < sections; ++section) {
            if (section == bad) {
                badFrom = length++;
                waste += 50 * 11 * width;
            }
            const std::int64_t along =
                lengths[static_cast<std::size_t>(dice.roll(0, lengths.size() - 1))];
            length += along;
            for (std::int64_t left = width; left > 0;) {
                std::int64_t across =
                    widths[static_cast<std::size_t>(dice.roll(0, widths.size() - 1))];
                // Every rest from 6 on can be drawn; 3, 4 and 5 are strips themselves.
                if (left - across < 3) {
                    across = left;
                }
                if (across > 5) {
                    across = 3;
                }
                ++counts[{along, across}];
                left -= across;
            }
        }
        addPlank(instance, 50 * length - 3, 11 * width - 3, 50 * length * 11 * width);
        instance.optimum += 50 * length * 11 * width;
        if (badFrom >= 0) {
            Plank& plank = instance.rack.planks.back();
            plank.defects.push_back({mm(50 * badFrom + 5), mm(0), mm(35), plank.width});
        }
    }
    for (const auto& [size, count] : counts) {
        addStrips(instance, 50 * size.first - 3, 11 * size.second - 3, count);
    }
    for (int i = 0; i < planks / 3; ++i) {
        const std::int64_t length = std::max(dice.roll(30, 60), waste / (50 * 11 * 22) + 1);
        addPlank(instance, 50 * length - 3, 11 * 22 - 3, 2 * 50 * length * 11 * 22);
    }
    return instance;
}

Instance typical() {
    Instance instance;
    instance.name = "typical";
    instance.rules.kerf = Length::um(3200);
    addPlank(instance, 2440, 185, 4200);
    addPlank(instance, 2130, 160, 3100);
    addPlank(instance, 1830, 210, 3500);
    addPlank(instance, 1520, 140, 1900);
    addPlank(instance, 3050, 150, 4100);
    addPlank(instance, 980, 120, 900);
    instance.rack.planks[5].isOffcut = true;
    instance.rack.planks[0].defects = {{mm(820), mm(60), mm(45), mm(40)}};
    instance.rack.planks[4].defects = {{mm(1310), mm(100), mm(30), mm(35)}};
    addStrips(instance, 540, 51, 8);
    addStrips(instance, 540, 48, 6);
    addStrips(instance, 620, 58, 4);
    addStrips(instance, 760, 40, 2);
    return instance;
}

}  // namespace kerfwright::timbertest

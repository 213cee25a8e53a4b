// An oracle that shares nothing with the search: the same question as a linear program with whole
// numbers, solved by the program cbc.
//
// Each kind of block X that is made has y_X = 1, and then one unit of flow through its lines, from
// the first to the last, all of them down or all of them across; an arc between two lines asks for
// the part between them to be one strip or made. The sum of all y is the number of glue-ups.
#include "core/search/search.h"
#include "tests/core/search/pictures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <map>
#include <random>
#include <sstream>
#include <string>

namespace kerfwright::searching {
namespace {

using Rows = std::vector<std::string>;

Rows part(const Rows& rows, std::size_t left, std::size_t right, std::size_t top,
          std::size_t bottom) {
    Rows result;
    for (std::size_t row = top; row < bottom; ++row)
        result.push_back(rows[row].substr(left, right - left));
    return result;
}

bool oneWood(const Rows& rows) {
    return std::all_of(rows.begin(), rows.end(), [&](const std::string& row) {
        return row.find_first_not_of(rows[0][0]) == std::string::npos;
    });
}

/// The first in the alphabet of its eight ways to lie.
Rows canonical(Rows rows) {
    Rows best = rows;
    for (int way = 0; way < 8; ++way) {
        if (way == 4) {
            Rows across(rows[0].size());
            for (const std::string& row : rows)
                for (std::size_t i = 0; i < row.size(); ++i)
                    across[i] += row[i];
            rows = across;
        }
        if (way % 2 == 0)
            std::reverse(rows.begin(), rows.end());
        else
            for (std::string& row : rows)
                std::reverse(row.begin(), row.end());
        if (rows.size() != best.size() ? rows.size() < best.size() : rows < best)
            best = rows;
    }
    return best;
}

class Program {
public:
    std::string text(const Rows& whole) {
        number(canonical(whole));
        for (std::size_t i = 0; i < blocks_.size(); ++i)  // grows on the way
            describe(i);
        std::ostringstream text;
        text << "Minimize\n glueups:";
        for (std::size_t i = 0; i < blocks_.size(); ++i)
            text << (i > 0 ? " + y" : " y") << i << (i % 20 == 19 ? "\n" : "");
        text << "\nSubject To\n whole: y0 = 1\n" << rows_.str() << "Binaries\n";
        for (std::size_t i = 0; i < blocks_.size(); ++i)
            text << " y" << i << "\n";
        text << "End\n";
        return text.str();
    }

private:
    std::size_t number(const Rows& block) {
        const auto [found, isNew] = numbers_.emplace(block, blocks_.size());
        if (isNew)
            blocks_.push_back(block);
        return found->second;
    }

    void describe(std::size_t index) {
        const Rows block = blocks_[index];
        std::string start;
        for (const bool alongX : {true, false}) {
            const std::size_t size = alongX ? block[0].size() : block.size();
            std::vector<std::string> balance(size + 1);
            for (std::size_t from = 0; from < size; ++from) {
                for (std::size_t to = from + 1; to <= size; ++to) {
                    if (to - from == size)
                        continue;
                    const Rows inner = alongX ? part(block, from, to, 0, block.size())
                                              : part(block, 0, block[0].size(), from, to);
                    const std::string arc = "f" + std::to_string(index) + (alongX ? "x" : "y") +
                                            std::to_string(from) + "t" + std::to_string(to);
                    if (!oneWood(inner))
                        rows_ << " " << arc << " - y" << number(canonical(inner)) << " <= 0\n";
                    if (from == 0)
                        start += " + " + arc;
                    balance[from] += " - " + arc;
                    balance[to] += " + " + arc;
                }
            }
            for (std::size_t line = 1; line < size; ++line)
                rows_ << balance[line] << " = 0\n";
        }
        rows_ << start << " - y" << index << " = 0\n";
    }

    std::map<Rows, std::size_t> numbers_;
    std::vector<Rows> blocks_;
    std::ostringstream rows_;
};

/// The optimum, or -1 where cbc says anything else.
int oracle(const Rows& rows) {
    const std::string base = testing::TempDir() + "glueups-" + std::to_string(rows.size()) +
                             std::to_string(rows[0].size()) + "-" + rows.front() + rows.back();
    {
        std::ofstream file(base + ".lp");
        file << Program().text(rows);
    }
    const std::string command =
        "cbc '" + base + ".lp' -solve -solution '" + base + ".txt' > '" + base + ".log' 2>&1";
    const bool ran = std::system(command.c_str()) == 0;
    EXPECT_TRUE(ran) << "cbc could not be run; it comes with the package coinor-cbc";
    std::ifstream answer(base + ".txt");
    std::string line;
    std::getline(answer, line);
    for (const char* end : {".lp", ".txt", ".log"})
        std::remove((base + end).c_str());
    const auto value = line.find("objective value ");
    if (!ran || line.rfind("Optimal", 0) != 0 || value == std::string::npos)
        return -1;
    return static_cast<int>(std::stod(line.substr(value + 16)) + 0.5);
}

int fewest(const Rows& rows) {
    const Picture picture = pictureOf(cells(rows), Laying::EndGrain, true);
    const SearchResult result = fewestGlueUps(picture);
    EXPECT_TRUE(result.proven);
    EXPECT_EQ(mistakes(result.found.front().construction, picture), "");
    return result.found.front().glueUps;
}

TEST(Oracle, AgreesOnBoardsWithPatterns) {
    for (const Rows& rows :
         {Rows{"ABABAB", "BABABA", "ABABAB", "BABABA", "ABABAB", "BABABA"},
          Rows{"ABABA", "BABAB", "ABABA", "BABAB", "ABABA"},
          Rows{"AAABBB", "BBBAAA", "AAABBB", "ABABAB", "ABABAB", "ABABAB"},
          Rows{"AAAAAA", "ABBBBA", "ABCCBA", "ABCCBA", "ABBBBA", "AAAAAA"},
          Rows{"ABCAB", "BCABC", "CABCA", "ABCAB"}, Rows{"ABBA", "BCCB", "BCCB", "ABBA", "AABB"}})
        EXPECT_EQ(fewest(rows), oracle(rows)) << rows[0] << ' ' << rows[1];
}

TEST(Oracle, AgreesOnRandomBoards) {
    std::mt19937 random(11);
    for (int i = 0; i < 4; ++i) {
        Rows rows(4 + static_cast<std::size_t>(i % 2), std::string(5, 'A'));
        for (std::string& row : rows)
            for (char& cell : row)
                cell = static_cast<char>('A' + random() % 3);
        EXPECT_EQ(fewest(rows), oracle(rows)) << rows[0] << ' ' << rows[1];
    }
}

}  // namespace
}  // namespace kerfwright::searching

// What holds for every sheet: all of it on the printed area, no type below 9 pt, no text on
// another.
#pragma once

#include "core/drawing/geometry.h"
#include "core/sheets/flow.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

namespace kerfwright::testing_samples {

inline constexpr double ninePoints = 9 * 25.4 / 72;

inline std::vector<Text> textsOf(const Page& page) {
    std::vector<Text> texts;
    for (const Mark& mark : page.drawing.marks) {
        if (const auto* text = std::get_if<Text>(&mark)) {
            texts.push_back(*text);
        }
    }
    return texts;
}

inline std::string plain(std::string words) {
    for (std::size_t at = words.find("\u00A0"); at != std::string::npos;
         at = words.find("\u00A0", at)) {
        words.replace(at, 2, " ");
    }
    return words;
}

/// All words of a page in the order in which they were set.
inline std::string wordsOf(const Page& page) {
    std::string all;
    for (const Text& text : textsOf(page)) {
        all += plain(text.text) + " ";
    }
    return all;
}

inline void expectWellSet(const std::vector<Page>& pages, Paper paper, const std::string& name) {
    const Box area = printedArea(paper);
    constexpr double hair = 0.01;
    for (const Page& page : pages) {
        SCOPED_TRACE(name + ", " + page.key);
        std::size_t outside = 0;
        for (const Mark& mark : page.drawing.marks) {
            const Box box = bounds(mark);
            const bool inside = box.x > area.x - hair && box.right() < area.right() + hair &&
                                box.y > area.y - hair && box.bottom() < area.bottom() + hair;
            if (!inside && ++outside <= 3) {
                const auto* text = std::get_if<Text>(&mark);
                ADD_FAILURE() << "outside 190 x 259: " << (text != nullptr ? text->text : "a mark")
                              << " at " << box.x << ", " << box.y << " to " << box.right() << ", "
                              << box.bottom();
            }
            // The foot has a rule above it, in which the line about rounding is; nothing else
            // reaches over it.
            const double foot = measureOf(paper).bottom() - 5.6;
            if (box.y < foot - 3 && box.bottom() > foot + 0.5 && ++outside <= 3) {
                const auto* text = std::get_if<Text>(&mark);
                ADD_FAILURE() << "in the foot: " << (text != nullptr ? text->text : "a mark")
                              << " at " << box.x << ", " << box.y << " to " << box.right() << ", "
                              << box.bottom();
            }
        }
        const std::vector<Text> texts = textsOf(page);
        std::vector<Box> boxes;
        for (const Text& text : texts) {
            EXPECT_GE(text.size, ninePoints - 1e-9) << text.text;
            boxes.push_back(bounds(text));
        }
        std::vector<std::size_t> order(texts.size());
        for (std::size_t i = 0; i < order.size(); ++i) {
            order[i] = i;
        }
        std::sort(order.begin(), order.end(),
                  [&](std::size_t a, std::size_t b) { return boxes[a].y < boxes[b].y; });
        constexpr double touch = 0.1;
        for (std::size_t i = 0; i < order.size(); ++i) {
            const Box& a = boxes[order[i]];
            for (std::size_t j = i + 1; j < order.size() && boxes[order[j]].y < a.bottom(); ++j) {
                const Box& b = boxes[order[j]];
                const bool apart =
                    a.right() < b.x + touch || b.right() < a.x + touch || a.bottom() < b.y + touch;
                EXPECT_TRUE(apart) << "“" << texts[order[i]].text << "” lies on “"
                                   << texts[order[j]].text << "” at " << b.x << ", " << b.y;
            }
        }
    }
}

}  // namespace kerfwright::testing_samples

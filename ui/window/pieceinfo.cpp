#include "ui/window/pieceinfo.h"

#include "core/replay/trace.h"
#include "ui/document/text.h"

#include <QCoreApplication>

#include <algorithm>

namespace kerfwright {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("PieceInfo", text);
}

bool names(const std::vector<std::string>& labels, const std::string& label) {
    return std::find(labels.begin(), labels.end(), label) != labels.end();
}

bool isField(const StepList& list, const std::string& label) {
    return std::any_of(list.steps.begin(), list.steps.end(), [&](const Step& step) {
        const auto* glue = std::get_if<Glue>(&step.work);
        const auto* take = std::get_if<Take>(&step.work);
        return (glue && glue->final && glue->result == label) || (take && take->result == label);
    });
}

/// How many lines of the field as glued lie outside the field that was wished, on each side.
int bandOf(const Job& job, const Field& wished) {
    return static_cast<int>(job.board.field.columns.size() - wished.columns.size()) / 2;
}

}  // namespace

std::vector<std::string> sliceOrder(const StepList& list) {
    std::vector<std::string> order;
    for (const Step& step : list.steps) {
        if (const auto* glue = std::get_if<Glue>(&step.work); glue && glue->final) {
            for (const Laid& laid : glue->parts) {
                order.push_back(laid.part);
            }
        } else if (const auto* take = std::get_if<Take>(&step.work)) {
            order.push_back(take->part.part);
        }
    }
    return order;
}

Origin originOf(const Job& job, const Field& field, QPoint cell, Length x, Length y) {
    Origin origin;
    const Plan& plan = job.plan;
    if (plan.parts.empty() || cell.x() < 0 || cell.y() < 0) {
        return origin;
    }
    // The plan is of the field as glued, with its band.
    const int ring = bandOf(job, field);
    const Length band = ring > 0 ? job.board.field.columns.front() : Length();
    const int found = useAt(plan, (plan.byColumns ? x : y) + band);
    const std::vector<std::string> order = sliceOrder(job.steps);
    const Part& whole = plan.field();
    if (found < 0 || static_cast<std::size_t>(found) >= order.size()) {
        return origin;
    }
    const auto line = static_cast<std::size_t>(found);
    const Use& use = whole.uses[line];
    if (use.part < 0 || static_cast<std::size_t>(use.part) >= plan.parts.size()) {
        return origin;
    }
    const Part& panel = plan.parts[static_cast<std::size_t>(use.part)];
    origin.slice = order[line];
    origin.panel = panel.label;
    origin.flipped = use.lay.flipped;
    origin.turnedOver = use.lay.turnedOver;
    if (panel.role == Role::Strip) {
        origin.strip = panel.label;
        return origin;
    }
    if (!plan.construction.empty()) {
        const Trace solids = trace(job.steps, job.board, job.season);
        const std::vector<std::string> chain = originAt(job.steps, solids, x + band, y + band);
        origin.strip = chain.empty() ? std::string() : chain.back();
        return origin;
    }
    // The outermost strips carry the trim margin, which lies outside the field.
    const Field& glued = job.board.field;
    const Length side = plan.byColumns ? glued.height() : glued.width();
    const Length in = (plan.byColumns ? y : x) + (ring > 0 ? glued.columns.front() : Length());
    const Length along = (use.lay.flipped ? side - in : in) + plan.margin;
    Length edge;
    for (const Use& stick : panel.uses) {
        const Part& strip = plan.parts[static_cast<std::size_t>(stick.part)];
        edge += strip.width.value;
        if (along < edge || &stick == &panel.uses.back()) {
            origin.strip = strip.label;
            break;
        }
    }
    return origin;
}

QStringList pieceWords(const Project& project, const Job* job, QPoint cell, Length x, Length y) {
    const Field& field = project.board.field;
    const int index = pieceAt(field, cell.x(), cell.y());
    if (index < 0) {
        return {};
    }
    const Piece& piece = field.pieces[static_cast<std::size_t>(index)];
    Length width;
    Length height;
    for (int i = 0; i < piece.across; ++i) {
        width += field.columns[static_cast<std::size_t>(piece.column + i)];
    }
    for (int i = 0; i < piece.down; ++i) {
        height += field.rows[static_cast<std::size_t>(piece.row + i)];
    }
    const Notation& notation = project.notation;
    QStringList words;
    words << tr("%1 · column %2, row %3")
                 .arg(toQt(project.woods[static_cast<std::size_t>(piece.wood)].name))
                 .arg(cell.x() + 1)
                 .arg(cell.y() + 1);
    words << tr("%1 × %2 × %3")
                 .arg(toQt(formatBare(width, notation)), toQt(formatBare(height, notation)),
                      toQt(format(project.board.thickness, notation)));
    if (job != nullptr) {
        const Origin origin = originOf(*job, field, cell, x, y);
        if (origin.isKnown()) {
            words << tr("strip %1 · slice %2%3%4")
                         .arg(toQt(origin.strip), toQt(origin.slice),
                              origin.flipped ? tr(", flipped") : QString(),
                              origin.turnedOver ? tr(", turned over") : QString());
        }
    }
    return words;
}

Highlight highlightOf(const Job& job, const Field& field, const Step& step) {
    Highlight highlight;
    if (const auto* border = std::get_if<FitBorder>(&step.work)) {
        highlight.border = !border->rails.empty();
        return highlight;
    }
    const auto* channel = std::get_if<CutChannel>(&step.work);
    if ((channel != nullptr && channel->edges == 1) || std::holds_alternative<GlueIn>(step.work) ||
        std::holds_alternative<CutRails>(step.work) ||
        std::holds_alternative<KeyCorners>(step.work)) {
        highlight.border = true;
        return highlight;
    }
    std::vector<bool> uses;
    const auto* cut = std::get_if<Crosscut>(&step.work);
    if (cut != nullptr && !cut->forPanels) {
        for (const std::string& slice : sliceOrder(job.steps)) {
            uses.push_back(names(cut->slices, slice));
        }
    } else if (const auto* mill = std::get_if<Mill>(&step.work)) {
        if (mill->panel.empty()) {
            highlight.border = true;
            return highlight;
        }
        uses = usesFrom(job.plan, {mill->panel});
    } else if (isField(job.steps, workpiece(step))) {
        highlight.field = true;
        highlight.border = bandOf(job, field) > 0;
        return highlight;
    } else {
        const std::string& part = workpiece(step);
        uses = usesFrom(job.plan, {part.substr(0, part.find('-'))});
    }
    for (const int line : linesOf(job.plan, job.board.field, uses)) {
        (job.plan.byColumns ? highlight.columns : highlight.rows).insert(line - bandOf(job, field));
    }
    return highlight;
}

Highlight highlightOf(const CautionPlace& place) {
    Highlight highlight;
    highlight.rows.insert(place.rows.begin(), place.rows.end());
    highlight.columns.insert(place.columns.begin(), place.columns.end());
    highlight.pieces.insert(place.pieces.begin(), place.pieces.end());
    highlight.border = place.border;
    return highlight;
}

std::vector<int> stepsFor(const Job& job, const Origin& origin) {
    std::vector<int> found;
    if (!origin.isKnown()) {
        return found;
    }
    for (std::size_t i = 0; i < job.steps.steps.size(); ++i) {
        const Step& step = job.steps.steps[i];
        bool makes = false;
        if (const auto* cut = std::get_if<Crosscut>(&step.work)) {
            makes = names(cut->slices, origin.slice);
        } else if (const auto* mill = std::get_if<Mill>(&step.work)) {
            makes = std::any_of(mill->lines.begin(), mill->lines.end(), [&](const MillLine& line) {
                return names(line.strips, origin.strip);
            });
        } else {
            makes = workpiece(step) == origin.panel;
        }
        if (makes) {
            found.push_back(static_cast<int>(i));
        }
    }
    return found;
}

}  // namespace kerfwright

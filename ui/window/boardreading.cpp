#include "ui/window/boardreading.h"

#include "ui/document/text.h"
#include "ui/window/pieceinfo.h"

#include <QCoreApplication>

#include <numeric>
#include <set>

namespace kerfwright {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BoardReading", text);
}

QString lines(const QString& one, const QString& many, int first, int count) {
    return count == 1 ? one.arg(first + 1) : many.arg(first + 1).arg(first + count);
}

std::vector<int> piecesUnder(const Field& field, const QRect& cells) {
    const std::vector<int> map = pieceMap(field);
    std::set<int> found;
    for (int row = cells.top(); row <= cells.bottom(); ++row) {
        for (int column = cells.left(); column <= cells.right(); ++column) {
            found.insert(map[static_cast<std::size_t>(row) * field.columns.size() +
                             static_cast<std::size_t>(column)]);
        }
    }
    return {found.begin(), found.end()};
}

Length sum(const std::vector<Length>& sizes, int first, int many) {
    return std::accumulate(sizes.begin() + first, sizes.begin() + first + many, Length());
}

QString markReading(const Project& project, const QRect& mark) {
    const Field& field = project.board.field;
    const std::vector<int> pieces = piecesUnder(field, mark);
    if (pieces.size() == 1) {
        return tr("Marked: ") + pieceWords(project, nullptr, mark.topLeft(), Length(), Length())
                                    .mid(0, 2)
                                    .join(QStringLiteral(", "));
    }
    return tr("Marked: %1, %2, %3 × %4")
        .arg(cellsWords(mark), piecesWords(project, pieces),
             toQt(formatBare(sum(field.columns, mark.x(), mark.width()), project.notation)),
             toQt(format(sum(field.rows, mark.y(), mark.height()), project.notation)));
}

}  // namespace

QString cellsWords(const QRect& cells) {
    return tr("%1, %2").arg(
        lines(tr("column %1"), tr("columns %1 to %2"), cells.x(), cells.width()),
        lines(tr("row %1"), tr("rows %1 to %2"), cells.y(), cells.height()));
}

QString piecesWords(const Project& project, const std::vector<int>& pieces) {
    std::vector<int> counts(project.woods.size(), 0);
    for (const int piece : pieces) {
        ++counts[static_cast<std::size_t>(
            project.board.field.pieces[static_cast<std::size_t>(piece)].wood)];
    }
    QStringList parts;
    for (std::size_t wood = 0; wood < counts.size(); ++wood) {
        if (counts[wood] > 0) {
            parts << tr("%1 %2").arg(counts[wood]).arg(inSentence(toQt(project.woods[wood].name)));
        }
    }
    return counted(static_cast<qsizetype>(pieces.size()), tr("%1 piece"), tr("%1 pieces")) +
           tr(": ") + parts.join(tr(", "));
}

QString fitWords(JointFit fit) {
    switch (fit) {
    case JointFit::Even:
        return tr("both sides equal");
    case JointFit::Neighbour:
        return tr("equal to the next beside it");
    case JointFit::Mirror:
        return tr("mirrors the other side");
    case JointFit::Step:
    case JointFit::Free:
        break;
    }
    return QString();
}

QStringList jointWords(const Project& project, const GridJoint& joint) {
    const Field& field = project.board.field;
    const std::vector<Length>& sizes = joint.vertical ? field.columns : field.rows;
    const auto first = static_cast<std::size_t>(joint.index);
    if (joint.isNone() || first + 1 >= sizes.size()) {
        return {};
    }
    QStringList words{joint.vertical ? tr("Joint after column %1").arg(joint.index + 1)
                                     : tr("Joint after row %1").arg(joint.index + 1),
                      tr("%1 | %2").arg(toQt(format(sizes[first], project.notation)),
                                        toQt(format(sizes[first + 1], project.notation)))};
    const QString fit = fitWords(fitOf(sizes, joint.index));
    if (!fit.isEmpty()) {
        words << fit;
    }
    return words;
}

QString handReading(const Project& project, const Hand& hand) {
    if (hand.carried != nullptr) {
        const QRect cells = hand.carried->cells();
        return tr("In the hand: %1 by %2 cells, top left over column %3, row %4")
            .arg(cells.width())
            .arg(cells.height())
            .arg(cells.x() + 1)
            .arg(cells.y() + 1);
    }
    if (hand.drawn) {
        const Drawn& drawn = *hand.drawn;
        return (drawn.stroke == Stroke::Line
                    ? tr("Line from column %1, row %2 to column %3, row %4")
                    : tr("Rectangle from column %1, row %2 to column %3, "
                         "row %4"))
                   .arg(drawn.from.x() + 1)
                   .arg(drawn.from.y() + 1)
                   .arg(drawn.to.x() + 1)
                   .arg(drawn.to.y() + 1) +
               QStringLiteral(", ") + piecesWords(project, drawn.pieces);
    }
    if (!hand.joint.isNone()) {
        return jointWords(project, hand.joint).join(QStringLiteral(", "));
    }
    return hand.mark.isNull() ? QString() : markReading(project, hand.mark);
}

}  // namespace kerfwright

#include "ui/window/stepwords.h"

#include "core/sheets/methods.h"
#include "ui/document/text.h"

#include <QCoreApplication>

namespace kerfwright {

namespace {

constexpr std::size_t partsInFull = 10;
constexpr std::size_t partsInFront = 6;  // where there are more
constexpr std::size_t partsAtTheEnd = 2;

class Describer {
    Q_DECLARE_TR_FUNCTIONS(StepWords)

public:
    Describer(const Record& record, int number, const Project& project)
        : record_(record)
        , number_(number)
        , project_(project) {}

    StepWords words;

    void operator()(const Mill& mill) {
        words.lines << tr("milled, thickness × width × length");
        for (const MillLine& line : mill.lines) {
            const int count = static_cast<int>(line.strips.size());
            words.lines << tr("%1 × %2: %3")
                               .arg(count)
                               .arg(woodName(line.wood),
                                    sizeText(line.thickness.value, line.width.value,
                                             line.length.value, notation()));
            const QString strips = labels(line.strips);
            add(tr("%1 · thickness").arg(strips), line.thickness);
            add(tr("%1 · width").arg(strips), line.width);
            add(tr("%1 · length").arg(strips), line.length);
            add(tr("%1 · rough thickness").arg(strips), line.roughThickness);
            add(tr("%1 · rough width").arg(strips), line.roughWidth);
            add(tr("%1 · rough length").arg(strips), line.roughLength);
        }
    }

    void operator()(const Glue& glue) {
        const int count = static_cast<int>(glue.parts.size());
        int flipped = 0;
        int turned = 0;
        for (const Laid& laid : glue.parts) {
            flipped += laid.lay.flipped ? 1 : 0;
            turned += laid.lay.turnedOver ? 1 : 0;
        }
        if (glue.final) {
            words.lines << counted(count, tr("%1 slice"), tr("%1 slices, in this order"));
            words.lines << order(glue);
            if (!glue.parts.empty() && glue.parts.front().lay.stoodUp) {
                words.lines << tr("stood up, end grain to the top");
            }
            if (flipped > 0) {
                words.lines << tr("%1 of them flipped end for end").arg(flipped);
            }
            if (turned > 0) {
                words.lines << tr("%1 of them turned over").arg(turned);
            }
        } else {
            words.lines << counted(count, tr("%1 strip"), tr("%1 strips, in this order"));
            words.lines << order(glue);
        }
        words.lines << tr("comes out %1")
                           .arg(sizeText(glue.thickness.value, glue.width.value, glue.length.value,
                                         notation()));
        words.lines << tr("%1 of glue face").arg(toQt(formatArea(glue.glueFace, notation().unit)));
        add(tr("Width"), glue.width);
        add(tr("Length"), glue.length);
        add(tr("Thickness"), glue.thickness);
    }

    void operator()(const Take& take) {
        words.lines << tr("one slice makes the field: no glue-up");
        words.lines << tr("lies %1").arg(
            sizeText(take.thickness.value, take.width.value, take.length.value, notation()));
        add(tr("Width"), take.width);
        add(tr("Length"), take.length);
        add(tr("Thickness"), take.thickness);
    }

    void operator()(const Flatten& flatten) {
        switch (flatten.purpose) {
        case Purpose::AfterGlueUp:
            break;
        case Purpose::RowHeight:
            words.lines << tr("this sets the height of its rows");
            break;
        case Purpose::Finished:
            words.lines << tr("both faces, to the finished thickness");
            break;
        }
        words.lines << tr("from %1").arg(text(flatten.from.value));
        const FlatWork work = flatWork(record_, flatten, number_);
        words.lines << tr("on: %1").arg(toQt(flatteningTools(work, project_.shop)));
        words.warning = toQt(whyNoPlaner(work, project_.shop));
        if (words.warning.endsWith(QLatin1Char('.'))) {
            words.warning.chop(1);
        }
        big(tr("flatten to"), flatten.to);
        add(tr("From"), flatten.from);
    }

    void operator()(const SquareEnd& square) {
        words.lines << tr("square the end; the plan has this much for it");
        words.lines << tr("%1 of the panel is left").arg(text(square.left));
        big(tr("saw off"), square.waste);
        add(tr("Kerf"), square.kerf);
    }

    void operator()(const Crosscut& cut) {
        QString line = labels(cut.slices);
        if (!cut.spares.empty()) {
            line += tr(" · spare %1").arg(labels(cut.spares));
        }
        words.lines << line;
        if (cut.marginRows) {
            words.lines << tr("with the trim margin of the outer rows");
        }
        words.lines << tr("%1 of the panel is left").arg(text(cut.left));
        big(tr("stop at"), cut.stop);
        add(tr("Kerf"), cut.kerf);
    }

    void operator()(const BringToSize& work) {
        words.lines << labels(work.parts);
        words.lines << toQt(sizingWords(work.sizing, notation()));
        big(tr("bring to"), work.sizing.to);
        add(tr("From"), work.sizing.from);
    }

    void operator()(const TrimField& trim) {
        words.lines << tr("all four sides");
        words.lines << tr("leaves %1 × %2")
                           .arg(toQt(formatBare(trim.width.value, notation())),
                                text(trim.height.value));
        big(tr("saw off each side"), trim.margin);
        add(tr("Width afterwards"), trim.width);
        add(tr("Height afterwards"), trim.height);
    }

    void operator()(const CutChannel& cut) {
        words.lines << tr("%1 deep, %2 wide").arg(text(cut.depth.value), text(cut.width.value));
        add(tr("Depth"), cut.depth);
        add(tr("Width"), cut.width);
        if (cut.fromFace.value > Length()) {
            add(tr("Below the top face"), cut.fromFace);
        }
    }

    void operator()(const GlueIn& glue) {
        for (const Inset& inset : glue.insets) {
            words.lines << tr("%1 into %2")
                               .arg(toQt(shownLabel(inset.stick)), toQt(shownLabel(inset.rail)));
        }
        add(tr("Stands out"), glue.proud);
    }

    void operator()(const CutRails& cut) {
        for (const Rail& rail : cut.rails) {
            add(cut.mitred ? tr("%1, long point to long point").arg(toQt(shownLabel(rail.label)))
                           : toQt(shownLabel(rail.label)),
                rail.longPoint);
        }
    }

    void operator()(const KeyCorners& keys) {
        words.lines << tr("four keys, trimmed flush");
        add(tr("Slot depth"), keys.depth);
        add(tr("Slot width"), keys.thickness);
        add(tr("Below the top face"), keys.fromFace);
    }

    void operator()(const FitBorder& border) {
        words.lines << tr("rails %1 wide").arg(text(border.width.value));
        words.lines << tr("board %1 × %2")
                           .arg(toQt(formatBare(border.boardWidth.value, notation())),
                                text(border.boardHeight.value));
        if (border.mustNotBeGlued) {
            words.warning = tr("Do not glue it to the field");
        }
        add(tr("Rail width"), border.width);
        if (border.design == BorderDesign::FloatingFrame) {
            add(tr("Gap left and right"), border.gapX);
            add(tr("Gap above and below"), border.gapY);
        }
        for (const Rail& rail : border.rails) {
            add(tr("Rail %1, long point to long point").arg(toQt(shownLabel(rail.label))),
                rail.longPoint);
        }
        add(tr("Pin"), border.pinDiameter);
        add(tr("Pins from the edge"), border.pinFromEdge);
        int number = 0;
        for (const Pin& pin : border.pins) {
            ++number;
            add(tr("Pin %1 · middle").arg(number), pin.at);
            add(tr("Pin %1 · slot outwards").arg(number), pin.outward);
            add(tr("Pin %1 · slot inwards").arg(number), pin.inward);
        }
        add(tr("Board width"), border.boardWidth);
        add(tr("Board height"), border.boardHeight);
    }

private:
    /// "A1 M · A2 C · …": the parts from left to right, or down the page, with the letters of their
    /// woods; of many only the first and the last.
    QString order(const Glue& glue) const {
        QStringList parts;
        for (std::size_t i = 0; i < glue.parts.size(); ++i) {
            if (glue.parts.size() > partsInFull && i == partsInFront) {
                parts << QStringLiteral("…");
                i = glue.parts.size() - partsAtTheEnd;
            }
            const Laid& laid = glue.parts[i];
            QString part = toQt(shownLabel(laid.part));
            const QString letter = glue.final ? QString() : letterOf(laid.part);
            if (!letter.isEmpty()) {
                part += QLatin1Char(' ') + letter;
            }
            if (laid.lay.flipped) {
                part += tr(" flipped");
            }
            if (laid.lay.turnedOver) {
                part += tr(" turned over");
            }
            part.replace(QLatin1Char(' '), QChar(QChar::Nbsp));
            parts << part;
        }
        return parts.join(QStringLiteral(" · "));
    }

    /// Of the wood of a strip; empty for a slice.
    QString letterOf(const std::string& strip) const {
        for (const PanelRecord& panel : record_.panels) {
            for (const StripRecord& one : panel.strips) {
                if (one.label == strip) {
                    return toQt(project_.woods[static_cast<std::size_t>(one.line->wood)].letter);
                }
            }
        }
        return QString();
    }

    const Notation& notation() const { return project_.notation; }
    QString text(Length length) const { return toQt(format(length, notation())); }

    QString woodName(int wood) const {
        return wood >= 0 && static_cast<std::size_t>(wood) < project_.woods.size()
                   ? toQt(project_.woods[static_cast<std::size_t>(wood)].name)
                   : QString();
    }

    static QString labels(const std::vector<std::string>& all) {
        if (all.empty()) {
            return QString();
        }
        if (all.size() > 4) {
            return tr("%1 … %2").arg(toQt(shownLabel(all.front())), toQt(shownLabel(all.back())));
        }
        QStringList list;
        for (const std::string& label : all) {
            list << toQt(shownLabel(label));
        }
        return list.join(QStringLiteral(", "));
    }

    void add(const QString& label, const Figure& figure) {
        if (!figure.terms.empty()) {
            words.figures.push_back({label, figure});
        }
    }

    void big(const QString& label, const Figure& figure) {
        words.bigLabel = label;
        words.big = text(figure.value);
        QString capital = label;
        capital[0] = capital[0].toUpper();
        words.figures.insert(words.figures.begin(), {capital, figure});
    }

    const Record& record_;
    int number_;
    const Project& project_;
};

}  // namespace

StepWriter::StepWriter(const StepList& list, const Project& project)
    : record_(list)
    , project_(project) {}

StepWords StepWriter::describe(int step) const {
    const Step& described = record_.list.steps[static_cast<std::size_t>(step)];
    Describer describer(record_, step + 1, project_);
    describer.words.title = toQt(title(described));
    std::visit(describer, described.work);
    return std::move(describer.words);
}

QString sizeText(Length thickness, Length width, Length length, const Notation& notation) {
    return toQt(formatSize({thickness, width, length}, notation));
}

}  // namespace kerfwright

#include "ui/paint/painter.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPolygonF>
#include <QRectF>

#include <cmath>
#include <vector>

namespace kerfwright {
namespace {

// Text is set at this size and scaled, because small pixel sizes round their advances and point
// sizes change with the device.
constexpr int fontPixels = 100;

const QColor darkLine(28, 22, 18);
const QColor lightLine(246, 240, 230);

/// Relative luminance of an sRGB colour as WCAG 2 defines it.
double luminance(const Colour& colour) {
    const auto linear = [](std::uint8_t channel) {
        const double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) +
           0.0722 * linear(colour.blue);
}

QFont fontOf(bool bold) {
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPixelSize(fontPixels);
    font.setBold(bold);
    // Advances as the core reckons with them, on every device.
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setKerning(false);
    return font;
}

class Brushwork {
public:
    Brushwork(QPainter& painter, const Drawing& drawing, const Theme& theme)
        : painter_(painter)
        , drawing_(drawing)
        , theme_(theme) {
        for (const Colour& wood : drawing.woods) {
            woods_.emplace_back(wood.red, wood.green, wood.blue);
            // Of black and white, the one with more contrast; they are equal at 0.179.
            woodLines_.push_back(luminance(wood) > 0.179 ? darkLine : lightLine);
        }
    }

    void paintAll() {
        const auto& marks = drawing_.marks;
        for (std::size_t i = 0; i < marks.size();) {
            if (const auto* rectangle = std::get_if<Rectangle>(&marks[i])) {
                i = paintRectangles(*rectangle, i);
            } else if (const auto* line = std::get_if<Line>(&marks[i])) {
                i = paintLines(*line, i);
            } else {
                if (const auto* shape = std::get_if<Shape>(&marks[i])) {
                    paintShape(*shape);
                } else if (const auto* text = std::get_if<Text>(&marks[i])) {
                    paintText(*text);
                }
                ++i;
            }
        }
    }

private:
    QColor colour(Ink ink, int wood) const {
        switch (ink) {
        case Ink::None:
            return {};
        case Ink::Paper:
            return theme_.paper;
        case Ink::Text:
            return theme_.text;
        case Ink::Quiet:
            return theme_.quiet;
        case Ink::Rule:
            return theme_.rule;
        case Ink::Joint:
            return theme_.joint;
        case Ink::ExtraJoint:
            return theme_.extraJoint;
        case Ink::Cut:
            return theme_.cut;
        case Ink::Waste:
            return theme_.waste;
        case Ink::Accent:
            return theme_.accent;
        case Ink::Warning:
            return theme_.warning;
        case Ink::Band:
            return theme_.band;
        case Ink::Wood:
        case Ink::WoodLine:
            break;
        }
        const auto& colours = ink == Ink::Wood ? woods_ : woodLines_;
        const auto index = static_cast<std::size_t>(wood);
        return wood >= 0 && index < colours.size() ? colours[index] : theme_.text;
    }

    void take(const Style& style) {
        if (hasStyle_ && style == style_) {
            return;
        }
        hasStyle_ = true;
        style_ = style;
        if (style.line == Ink::None) {
            painter_.setPen(Qt::NoPen);
        } else {
            QPen pen(colour(style.line, style.wood), style.lineWidth, Qt::SolidLine, Qt::FlatCap,
                     Qt::MiterJoin);
            if (style.dashed && style.lineWidth > 0) {
                // Qt counts dashes in line widths.
                pen.setDashPattern({6.0, 4.0});
            }
            painter_.setPen(pen);
        }
        if (style.fill == Ink::None) {
            painter_.setBrush(Qt::NoBrush);
        } else {
            painter_.setBrush(colour(style.fill, style.wood));
        }
    }

    /// Runs of rectangles of one style are painted at once. Plain fills go without antialiasing, or
    /// the paper would shine through where two of them meet.
    std::size_t paintRectangles(const Rectangle& first, std::size_t from) {
        take(first.style);
        if (first.radius > 0) {
            painter_.drawRoundedRect(
                QRectF(first.box.x, first.box.y, first.box.width, first.box.height), first.radius,
                first.radius);
            return from + 1;
        }
        rectangles_.clear();
        std::size_t i = from;
        for (; i < drawing_.marks.size(); ++i) {
            const auto* next = std::get_if<Rectangle>(&drawing_.marks[i]);
            if (next == nullptr || next->radius > 0 || !(next->style == first.style)) {
                break;
            }
            rectangles_.emplace_back(next->box.x, next->box.y, next->box.width, next->box.height);
        }
        const bool smooth = painter_.testRenderHint(QPainter::Antialiasing);
        painter_.setRenderHint(QPainter::Antialiasing, smooth && first.style.line != Ink::None);
        painter_.drawRects(rectangles_.data(), static_cast<int>(rectangles_.size()));
        painter_.setRenderHint(QPainter::Antialiasing, smooth);
        return i;
    }

    std::size_t paintLines(const Line& first, std::size_t from) {
        take(first.style);
        lines_.clear();
        std::size_t i = from;
        for (; i < drawing_.marks.size(); ++i) {
            const auto* next = std::get_if<Line>(&drawing_.marks[i]);
            if (next == nullptr || !(next->style == first.style)) {
                break;
            }
            lines_.emplace_back(next->from.x, next->from.y, next->to.x, next->to.y);
        }
        painter_.drawLines(lines_.data(), static_cast<int>(lines_.size()));
        return i;
    }

    void paintShape(const Shape& shape) {
        take(shape.style);
        if (shape.style.line != Ink::None) {
            // Devices cut sharp mitres off at different lengths; round corners are the same on all.
            QPen pen = painter_.pen();
            pen.setJoinStyle(Qt::RoundJoin);
            painter_.setPen(pen);
            hasStyle_ = false;
        }
        QPolygonF polygon;
        polygon.reserve(static_cast<qsizetype>(shape.points.size()));
        for (const Point& point : shape.points) {
            polygon.append(QPointF(point.x, point.y));
        }
        if (shape.closed) {
            painter_.drawPolygon(polygon);
        } else {
            painter_.drawPolyline(polygon);
        }
    }

    void paintText(const Text& text) {
        const QString words =
            QString::fromUtf8(text.text.data(), static_cast<qsizetype>(text.text.size()));
        const QFont& font = text.bold ? bold_ : regular_;
        const double scale = text.size / fontPixels;
        const double width = QFontMetricsF(font).horizontalAdvance(words) * scale;
        const double squeeze =
            text.maxWidth > 0 && width > text.maxWidth ? text.maxWidth / width : 1;
        double start = 0;
        if (text.align == Align::Centre) {
            start = -width * squeeze / 2;
        } else if (text.align == Align::Right) {
            start = -width * squeeze;
        }
        const QTransform before = painter_.transform();
        painter_.translate(text.at.x, text.at.y);
        if (text.degrees != 0) {
            painter_.rotate(text.degrees);
        }
        painter_.translate(start, 0);
        painter_.scale(scale * squeeze, scale);
        painter_.setFont(font);
        // SVG loses text without a pen and colours it by the pen.
        painter_.setPen(colour(text.style.line, text.style.wood));
        painter_.drawText(QPointF(0, 0), words);
        painter_.setTransform(before);
        hasStyle_ = false;
    }

    QPainter& painter_;
    const Drawing& drawing_;
    const Theme& theme_;
    std::vector<QColor> woods_;
    std::vector<QColor> woodLines_;
    std::vector<QRectF> rectangles_;
    std::vector<QLineF> lines_;
    const QFont regular_ = fontOf(false);
    const QFont bold_ = fontOf(true);
    Style style_;
    bool hasStyle_ = false;
};

}  // namespace

Theme paperTheme() {
    return {.paper = QColor(255, 255, 255),
            .text = QColor(24, 24, 24),
            .quiet = QColor(88, 88, 84),
            .rule = QColor(176, 174, 168),
            .joint = QColor(34, 28, 24),
            .extraJoint = QColor(178, 34, 34),
            .cut = QColor(24, 24, 24),
            .waste = QColor(120, 118, 112),
            .accent = QColor(23, 99, 110),
            .warning = QColor(150, 72, 0),
            .band = QColor(242, 241, 237)};
}

Theme windowTheme(bool dark) {
    if (!dark) {
        Theme theme = paperTheme();
        theme.paper = QColor(238, 236, 230);
        theme.rule = QColor(196, 193, 185);
        theme.band = QColor(228, 225, 217);
        return theme;
    }
    return {.paper = QColor(38, 38, 36),
            .text = QColor(236, 234, 228),
            .quiet = QColor(168, 165, 157),
            .rule = QColor(84, 82, 77),
            .joint = QColor(20, 16, 14),
            .extraJoint = QColor(255, 112, 100),
            .cut = QColor(236, 234, 228),
            .waste = QColor(140, 137, 130),
            .accent = QColor(86, 182, 194),
            .warning = QColor(240, 170, 70),
            .band = QColor(54, 53, 50)};
}

void paint(QPainter& painter, const Drawing& drawing, const Theme& theme) {
    painter.save();
    // Sizes read from left to right wherever the window's words begin.
    painter.setLayoutDirection(Qt::LeftToRight);
    Brushwork(painter, drawing, theme).paintAll();
    painter.restore();
}

}  // namespace kerfwright

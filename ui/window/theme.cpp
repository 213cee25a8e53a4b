#include "ui/window/theme.h"

#include "ui/window/focusring.h"
#include "ui/window/icons.h"
#include "ui/window/tones.h"

#include <QAbstractScrollArea>
#include <QApplication>
#include <QPainter>
#include <QSettings>
#include <QStyleOption>
#include <QToolButton>

namespace kerfwright {

namespace {

constexpr double radius = 4;

QPalette paletteOf(const QColor& surface, const QColor& surround, const QColor& entry,
                   const QColor& text, const QColor& quiet, const QColor& edge, const QColor& rim,
                   const QColor& accent, const QColor& onAccent, const QColor& faded) {
    QPalette palette;
    palette.setColor(QPalette::Window, surface);
    palette.setColor(QPalette::WindowText, text);
    palette.setColor(QPalette::Base, entry);
    palette.setColor(QPalette::AlternateBase, surround);
    palette.setColor(QPalette::Text, text);
    palette.setColor(QPalette::Button, surface);
    palette.setColor(QPalette::ButtonText, text);
    palette.setColor(QPalette::BrightText, onAccent);
    palette.setColor(QPalette::Light, mixed(surface, Qt::white, 0.3));
    palette.setColor(QPalette::Midlight, mixed(surface, edge, 0.4));
    palette.setColor(QPalette::Mid, edge);
    palette.setColor(QPalette::Dark, rim);
    palette.setColor(QPalette::Shadow, mixed(edge, Qt::black, 0.6));
    palette.setColor(QPalette::Highlight, accent);
    palette.setColor(QPalette::HighlightedText, onAccent);
    palette.setColor(QPalette::Link, accent);
    palette.setColor(QPalette::LinkVisited, accent);
    palette.setColor(QPalette::PlaceholderText, quiet);
    palette.setColor(QPalette::ToolTipBase, entry);
    palette.setColor(QPalette::ToolTipText, text);
    for (const QPalette::ColorRole role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, faded);
    }
    return palette;
}

/// What the desktop asks for, seen with none of our own palettes in force.
bool systemIsDark() {
    QApplication::setPalette(QPalette());
    return isDark(QApplication::palette());
}

void box(QPainter* painter, const QRectF& rect, const QColor& fill, const QColor& line) {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(line.isValid() ? QPen(line, 1) : QPen(Qt::NoPen));
    painter->setBrush(fill.isValid() ? QBrush(fill) : QBrush(Qt::NoBrush));
    painter->drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius);
    painter->restore();
}

}  // namespace

QPalette lightPalette() {
    return paletteOf(QColor(251, 249, 246), QColor(238, 234, 227), QColor(255, 255, 255),
                     QColor(38, 36, 32), QColor(100, 95, 87), QColor(221, 215, 206),
                     QColor(130, 124, 114), QColor(24, 108, 117), QColor(255, 255, 255),
                     QColor(165, 160, 152));
}

QPalette darkPalette() {
    return paletteOf(QColor(38, 37, 34), QColor(27, 26, 24), QColor(48, 46, 43),
                     QColor(235, 231, 223), QColor(168, 162, 152), QColor(66, 63, 58),
                     QColor(140, 134, 124), QColor(98, 187, 196), QColor(16, 30, 32),
                     QColor(110, 106, 99));
}

ThemeChoice themeChoice() {
    const QString text = QSettings().value(QStringLiteral("theme")).toString();
    if (text == QStringLiteral("light")) {
        return ThemeChoice::Light;
    }
    return text == QStringLiteral("dark") ? ThemeChoice::Dark : ThemeChoice::System;
}

void setThemeChoice(ThemeChoice choice) {
    QSettings().setValue(QStringLiteral("theme"),
                         choice == ThemeChoice::Light  ? QStringLiteral("light")
                         : choice == ThemeChoice::Dark ? QStringLiteral("dark")
                                                       : QStringLiteral("system"));
}

namespace {

constexpr int besideTab = 4;  // between the words of a tab and its badge

/// The room left and right of what a tab shows.
int tabSide(const QStyleOptionTab& tab) {
    const int words = tab.fontMetrics.size(Qt::TextShowMnemonic, tab.text).width();
    const int button = tab.rightButtonSize.width();
    const int shown = words + (button > 0 ? button + besideTab : 0);
    return std::max(0, (tab.rect.width() - shown) / 2);
}

}  // namespace

void applyTheme(QApplication& application) {
    if (qobject_cast<WorkshopStyle*>(QApplication::style()) == nullptr) {
        application.setStyle(new WorkshopStyle);
    }
    const ThemeChoice choice = themeChoice();
    const bool dark =
        choice == ThemeChoice::Dark || (choice == ThemeChoice::System && systemIsDark());
    QApplication::setPalette(dark ? darkPalette() : lightPalette());
}

WorkshopStyle::WorkshopStyle()
    : QProxyStyle(QStringLiteral("Fusion")) {}

void WorkshopStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                                  QPainter* painter, const QWidget* widget) const {
    const Tones tones = tonesOf(option->palette);
    const bool enabled = option->state.testFlag(State_Enabled);
    const bool focus = option->state.testFlag(State_HasFocus);
    const bool hover = option->state.testFlag(State_MouseOver) && enabled;
    const bool down = option->state.testFlag(State_Sunken);
    const bool on = option->state.testFlag(State_On);
    switch (element) {
    case PE_PanelLineEdit:
        box(painter, option->rect, tones.entry, enabled ? tones.rim : tones.edge);
        if (focus) {
            paintFocusRing(*painter, option->rect, tones, 4, FocusRing::Always);
        }
        return;
    case PE_FrameLineEdit:
        return;
    case PE_Frame:
        if (qobject_cast<const QAbstractScrollArea*>(widget) != nullptr) {
            painter->save();
            painter->setPen(enabled ? tones.rim : tones.edge);
            painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
            painter->restore();
            if (focus) {
                paintFocusRing(*painter, option->rect, tones, 1);
            }
            return;
        }
        break;
    case PE_FrameFocusRect:
        // Of a tool button it would lie below its picture.
        paintFocusRing(*painter,
                       qobject_cast<const QToolButton*>(widget) != nullptr ? widget->rect()
                                                                           : option->rect,
                       tones);
        return;
    case PE_PanelButtonCommand: {
        const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
        const bool first =
            button != nullptr && button->features.testFlag(QStyleOptionButton::DefaultButton);
        const QColor ground = down || on ? tones.soft
                              : hover    ? mixed(tones.entry, tones.accent, 0.06)
                                         : tones.entry;
        box(painter, option->rect, ground, first ? tones.accent : enabled ? tones.rim : tones.edge);
        if (focus) {
            paintFocusRing(*painter, option->rect, tones);
        }
        return;
    }
    case PE_PanelButtonTool:
        if (down || on || hover) {
            // A ground alone would tell what is on by colour only (WCAG 2.1, 1.4.1).
            box(painter, option->rect,
                down || on ? tones.soft : mixed(tones.surface, tones.text, 0.06),
                on ? (enabled ? tones.accent : tones.edge) : QColor());
        }
        return;
    case PE_IndicatorCheckBox: {
        const QRectF square = option->rect;
        box(painter, square, on ? tones.accent : tones.entry,
            on || focus || hover ? tones.accent
            : enabled            ? tones.rim
                                 : tones.edge);
        if (on) {
            painter->save();
            painter->setRenderHint(QPainter::Antialiasing);
            painter->setPen(QPen(option->palette.color(QPalette::HighlightedText), 2, Qt::SolidLine,
                                 Qt::RoundCap, Qt::RoundJoin));
            const QPointF middle = square.center();
            painter->drawPolyline(QPolygonF{
                {middle + QPointF(-3.5, 0), middle + QPointF(-1, 2.8), middle + QPointF(3.8, -3)}});
            painter->restore();
        }
        return;
    }
    case PE_FrameTabBarBase:
        painter->fillRect(
            QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1), tones.edge);
        return;
    case PE_FrameTabWidget:
        return;
    case PE_IndicatorToolBarSeparator:
        painter->fillRect(
            QRect(option->rect.center().x(), option->rect.top() + 7, 1, option->rect.height() - 14),
            tones.edge);
        return;
    case PE_PanelTipLabel:
        painter->fillRect(option->rect, tones.edge);
        painter->fillRect(option->rect.adjusted(1, 1, -1, -1), tones.entry);
        return;
    default:
        break;
    }
    QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void WorkshopStyle::drawControl(ControlElement element, const QStyleOption* option,
                                QPainter* painter, const QWidget* widget) const {
    const Tones tones = tonesOf(option->palette);
    switch (element) {
    case CE_MenuBarEmptyArea:
        painter->fillRect(option->rect, tones.surface);
        return;
    case CE_ToolBar:
    case CE_HeaderSection:
    case CE_HeaderEmptyArea:
        painter->fillRect(option->rect, tones.surface);
        painter->fillRect(
            QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), 1), tones.edge);
        return;
    case CE_Splitter:
        painter->fillRect(option->rect, tones.edge);
        return;
    case CE_TabBarTabShape: {
        const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(option);
        if (tab == nullptr) {
            return;
        }
        const int side = std::max(0, tabSide(*tab) - 1);
        const QRect line(tab->rect.left() + side, tab->rect.bottom() - 1,
                         tab->rect.width() - 2 * side, 2);
        if (tab->state.testFlag(State_Selected)) {
            painter->fillRect(line, tones.accent);
        } else if (tab->state.testFlag(State_MouseOver)) {
            painter->fillRect(line, tones.edge);
        }
        return;
    }
    case CE_PushButtonLabel: {
        const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
        if (button == nullptr || button->icon.isNull() || button->direction != Qt::RightToLeft) {
            break;
        }
        // Fusion leaves words and picture apart there.
        constexpr int gap = 4;
        const int words = button->fontMetrics.size(Qt::TextShowMnemonic, button->text).width();
        const QSize icon = button->iconSize;
        const int left = (button->rect.width() - words - gap - icon.width()) / 2;
        const QRect text(left, button->rect.top(), words, button->rect.height());
        drawItemText(painter, text, Qt::AlignCenter | Qt::TextShowMnemonic, button->palette,
                     button->state.testFlag(State_Enabled), button->text, QPalette::ButtonText);
        button->icon.paint(painter,
                           QRect(text.right() + gap, button->rect.center().y() - icon.height() / 2,
                                 icon.width(), icon.height()),
                           Qt::AlignCenter,
                           button->state.testFlag(State_Enabled) ? QIcon::Normal : QIcon::Disabled);
        return;
    }
    case CE_TabBarTabLabel: {
        const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(option);
        if (tab == nullptr) {
            return;
        }
        painter->save();
        painter->setPen(tab->state.testFlag(State_Selected) ? tones.text : tones.quiet);
        const int button = tab->rightButtonSize.width();
        const int side = button > 0 ? tabSide(*tab) : 0;
        const QRect room =
            tab->rect.adjusted(side, 0, button > 0 ? -button - besideTab - side : 0, 0);
        painter->drawText(visualRect(tab->direction, tab->rect, room),
                          Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextHideMnemonic, tab->text);
        painter->restore();
        if (tab->state.testFlag(State_HasFocus)) {
            paintFocusRing(*painter, QRectF(tab->rect).adjusted(2, 4, -2, -4), tones);
        }
        return;
    }
    default:
        break;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void WorkshopStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                       QPainter* painter, const QWidget* widget) const {
    if (control == CC_Slider) {
        drawSlider(option, painter, widget);
        return;
    }
    if (control != CC_ScrollBar) {
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        return;
    }
    const Tones tones = tonesOf(option->palette);
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (bar == nullptr || bar->maximum <= bar->minimum) {
        return;
    }
    const QRectF handle =
        QRectF(subControlRect(control, option, SC_ScrollBarSlider, widget)).adjusted(2, 2, -2, -2);
    const bool active = option->state.testFlag(State_MouseOver) ||
                        option->activeSubControls.testFlag(SC_ScrollBarSlider);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(Qt::NoPen);
    painter->setBrush(active ? mixed(tones.rim, tones.text, 0.35) : tones.rim);
    const double round = std::min(handle.width(), handle.height()) / 2;
    painter->drawRoundedRect(handle, round, round);
    painter->restore();
}

void WorkshopStyle::drawSlider(const QStyleOptionComplex* option, QPainter* painter,
                               const QWidget* widget) const {
    const Tones tones = tonesOf(option->palette);
    const QRectF groove = subControlRect(CC_Slider, option, SC_SliderGroove, widget);
    const QRectF handle = subControlRect(CC_Slider, option, SC_SliderHandle, widget);
    const bool enabled = option->state.testFlag(State_Enabled);
    const bool lying = option->state.testFlag(State_Horizontal);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(Qt::NoPen);
    painter->setBrush(enabled ? tones.rim : tones.edge);
    const QPointF middle = groove.center();
    constexpr double half = 1.5;
    painter->drawRoundedRect(
        lying ? QRectF(groove.left(), middle.y() - half, groove.width(), 2 * half)
              : QRectF(middle.x() - half, groove.top(), 2 * half, groove.height()),
        half, half);
    const double radius = std::min(handle.width(), handle.height()) / 2 - 1;
    painter->setBrush(enabled ? tones.accent : tones.edge);
    painter->drawEllipse(handle.center(), radius, radius);
    painter->restore();
    if (option->state.testFlag(State_HasFocus)) {
        paintFocusRing(*painter, option->rect, tones);
    }
}

QRect WorkshopStyle::subElementRect(SubElement element, const QStyleOption* option,
                                    const QWidget* widget) const {
    const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(option);
    if (element != SE_TabBarTabRightButton || tab == nullptr) {
        return QProxyStyle::subElementRect(element, option, widget);
    }
    // As far from its edge as the words are from theirs, however narrow the tab is.
    const QSize size = tab->rightButtonSize;
    const QRect place(QPoint(tab->rect.right() + 1 - tabSide(*tab) - size.width(),
                             tab->rect.center().y() - size.height() / 2),
                      size);
    return visualRect(tab->direction, tab->rect, place);
}

QRect WorkshopStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option,
                                    SubControl part, const QWidget* widget) const {
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (control != CC_ScrollBar || bar == nullptr) {
        return QProxyStyle::subControlRect(control, option, part, widget);
    }
    // A groove without arrow buttons.
    const QRect all = bar->rect;
    const bool lying = bar->orientation == Qt::Horizontal;
    const int groove = lying ? all.width() : all.height();
    const int range = bar->maximum - bar->minimum;
    int length = groove;
    if (range > 0) {
        length = static_cast<int>(qint64{bar->pageStep} * groove / (qint64{range} + bar->pageStep));
        length = std::clamp(length, std::min(32, groove), groove);
    }
    const int start = sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition,
                                              groove - length, bar->upsideDown);
    const auto along = [&](int from, int size) {
        return lying ? QRect(all.left() + from, all.top(), size, all.height())
                     : QRect(all.left(), all.top() + from, all.width(), size);
    };
    switch (part) {
    case SC_ScrollBarSlider:
        return along(start, length);
    case SC_ScrollBarGroove:
        return all;
    case SC_ScrollBarSubPage:
        return along(0, start);
    case SC_ScrollBarAddPage:
        return along(start + length, groove - start - length);
    default:
        return QRect();
    }
}

QSize WorkshopStyle::sizeFromContents(ContentsType type, const QStyleOption* option,
                                      const QSize& size, const QWidget* widget) const {
    QSize wanted = QProxyStyle::sizeFromContents(type, option, size, widget);
    if (type == CT_LineEdit) {
        wanted.setHeight(std::max(wanted.height(), 28));
    } else if (type == CT_PushButton) {
        wanted += QSize(16, 0);
        wanted.setHeight(std::max(wanted.height(), 30));
    } else if (type == CT_TabBarTab) {
        wanted.setHeight(40);
    }
    return wanted;
}

int WorkshopStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                               const QWidget* widget) const {
    switch (metric) {
    case PM_DefaultFrameWidth:
        // Room for the ring of the focus.
        return qobject_cast<const QAbstractScrollArea*>(widget) != nullptr
                   ? 2
                   : QProxyStyle::pixelMetric(metric, option, widget);
    case PM_ScrollBarExtent:
        return 10;
    case PM_SplitterWidth:
        return 1;
    case PM_TabBarTabShiftVertical:
    case PM_TabBarBaseOverlap:
    case PM_TabBarTabOverlap:
        return 0;
    case PM_TabBarTabHSpace:
        return 14;
    case PM_ToolBarItemSpacing:
        return 2;
    case PM_ToolBarFrameWidth:
        return 0;
    case PM_ToolBarItemMargin:
        return 4;
    case PM_ToolBarIconSize:
        return 20;
    case PM_ToolBarSeparatorExtent:
        return 13;
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
        return 0;
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int WorkshopStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                             QStyleHintReturn* data) const {
    if (hint == SH_TabBar_Alignment) {
        return Qt::AlignLeft;
    }
    if (hint == SH_EtchDisabledText) {
        return 0;
    }
    return QProxyStyle::styleHint(hint, option, widget, data);
}

QIcon WorkshopStyle::standardIcon(StandardPixmap kind, const QStyleOption* option,
                                  const QWidget* widget) const {
    if (kind == SP_ToolBarHorizontalExtensionButton) {
        return lineIcon(QStringLiteral("more"));
    }
    return QProxyStyle::standardIcon(kind, option, widget);
}

}  // namespace kerfwright

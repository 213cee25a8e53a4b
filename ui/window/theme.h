// Light and dark: the palettes of the program, and the style that draws its controls.
#pragma once

#include <QPalette>
#include <QProxyStyle>

QT_BEGIN_NAMESPACE
class QApplication;
QT_END_NAMESPACE

namespace kerfwright {

enum class ThemeChoice { System, Light, Dark };

QPalette lightPalette();
QPalette darkPalette();

/// The choice kept in the settings.
ThemeChoice themeChoice();
void setThemeChoice(ThemeChoice choice);
/// Sets palette and, once, the style. Call again when the choice or the system's theme changes.
void applyTheme(QApplication& application);

/// Fusion with flat panels, slim scroll bars and underlined tabs, coloured by the palette alone.
class WorkshopStyle : public QProxyStyle {
    Q_OBJECT

public:
    WorkshopStyle();

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                            QPainter* painter, const QWidget* widget) const override;
    QRect subElementRect(SubElement element, const QStyleOption* option,
                         const QWidget* widget) const override;
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                         const QWidget* widget) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                           const QWidget* widget) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option,
                    const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* data) const override;
    QIcon standardIcon(StandardPixmap kind, const QStyleOption* option,
                       const QWidget* widget) const override;

private:
    void drawSlider(const QStyleOptionComplex* option, QPainter* painter,
                    const QWidget* widget) const;
};

}  // namespace kerfwright

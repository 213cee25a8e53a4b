#include "ui/window/icons.h"

#include "ui/window/tones.h"

#include <QApplication>
#include <QByteArray>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>

namespace kerfwright {

namespace {

/// Draws the SVG with its black strokes in the palette's colour at the time of painting, so that a
/// change from light to dark needs no new icons.
class LineIconEngine : public QIconEngine {
public:
    explicit LineIconEngine(QByteArray svg)
        : svg_(std::move(svg)) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode,
               QIcon::State state) override {
        const Tones tones = tonesOf(QApplication::palette());
        QColor colour = state == QIcon::On ? tones.accent : tones.text;
        if (mode == QIcon::Disabled) {
            colour = QApplication::palette().color(QPalette::Disabled, QPalette::ButtonText);
        }
        QByteArray tinted = svg_;
        tinted.replace("#000000", colour.name().toLatin1());
        QSvgRenderer renderer(tinted);
        renderer.render(painter, QRectF(rect));
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap image(size);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paint(&painter, QRect(QPoint(), size), mode, state);
        return image;
    }

    QIconEngine* clone() const override { return new LineIconEngine(svg_); }

private:
    QByteArray svg_;
};

}  // namespace

QIcon lineIcon(const QString& name) {
    QFile file(QStringLiteral(":/icons/") + name + QStringLiteral(".svg"));
    if (!file.open(QIODevice::ReadOnly)) {
        qWarning("no such icon: %s", qUtf8Printable(name));
        return QIcon();
    }
    return QIcon(new LineIconEngine(file.readAll()));
}

QIcon applicationIcon() {
    QFile file(QStringLiteral(":/icons/kerfwright.svg"));
    if (!file.open(QIODevice::ReadOnly)) {
        return QIcon();
    }
    // The engine replaces pure black only, which the program's icon does not use.
    return QIcon(new LineIconEngine(file.readAll()));
}

}  // namespace kerfwright

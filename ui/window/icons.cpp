#include "ui/window/icons.h"

#include "ui/window/tones.h"

#include <QApplication>
#include <QByteArray>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QPixmap>
#include <QPixmapCache>
#include <QSvgRenderer>

namespace kerfwright {

namespace {

QString fileOf(const QString& name) {
    return QStringLiteral(":/icons/") + name + QStringLiteral(".svg");
}

/// Draws the SVG with its black strokes in the palette's colour at the time of painting, so that a
/// change from light to dark needs no new icons.
class LineIconEngine : public QIconEngine {
public:
    explicit LineIconEngine(QString name)
        : name_(std::move(name)) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode,
               QIcon::State state) override {
        QFile file(fileOf(name_));
        if (!file.open(QIODevice::ReadOnly)) {
            return;
        }
        QByteArray svg = file.readAll();
        svg.replace("#000000", colour(mode, state).toLatin1());
        QSvgRenderer renderer(svg);
        renderer.render(painter, QRectF(rect));
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        const QString key = QStringLiteral("line icon %1 %2x%3 %4")
                                .arg(name_)
                                .arg(size.width())
                                .arg(size.height())
                                .arg(colour(mode, state));
        QPixmap image;
        if (!QPixmapCache::find(key, &image)) {
            image = QPixmap(size);
            image.fill(Qt::transparent);
            QPainter painter(&image);
            paint(&painter, QRect(QPoint(), size), mode, state);
            painter.end();
            QPixmapCache::insert(key, image);
        }
        return image;
    }

    QIconEngine* clone() const override { return new LineIconEngine(name_); }

private:
    static QString colour(QIcon::Mode mode, QIcon::State state) {
        if (mode == QIcon::Disabled) {
            return QApplication::palette().color(QPalette::Disabled, QPalette::ButtonText).name();
        }
        const Tones tones = tonesOf(QApplication::palette());
        return (state == QIcon::On ? tones.accent : tones.text).name();
    }

    QString name_;
};

}  // namespace

QIcon lineIcon(const QString& name) {
    if (!QFile::exists(fileOf(name))) {
        qWarning("no such icon: %s", qUtf8Printable(name));
        return QIcon();
    }
    return QIcon(new LineIconEngine(name));
}

QIcon applicationIcon() {
    // The engine replaces pure black only, which the program's icon does not use.
    return lineIcon(QStringLiteral("kerfwright"));
}

void drawAhead(const QStringList& icons, int size, QIcon::Mode mode, QIcon::State state) {
    const QSize pixels = QSize(size, size) * qApp->devicePixelRatio();
    for (const QString& name : icons) {
        LineIconEngine(name).pixmap(pixels, mode, state);
    }
}

}  // namespace kerfwright

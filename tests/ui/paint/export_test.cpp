#include "tests/core/sheets/samples.h"
#include "ui/paint/export.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QPainter>
#include <QPrinter>
#include <QProcess>
#include <QRegularExpression>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QTransform>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <ctime>

using namespace kerfwright;
using namespace kerfwright::testing_samples;

namespace {

constexpr double mmPerPoint = 25.4 / 72;

QByteArray run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(60'000)) << program.toStdString();
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    return process.readAllStandardOutput();
}

class Files : public ::testing::Test {
protected:
    QString path(const QString& name) const { return folder_.filePath(name); }
    QString write(const QString& name, const QByteArray& bytes) const {
        EXPECT_EQ(writeFileAtomically(path(name), bytes), QString());
        return path(name);
    }

private:
    QTemporaryDir folder_;
};

using Pdf = Files;
using Svg = Files;
using AtomicFile = Files;

Page barePage(Paper paper, std::vector<Mark> marks) {
    Page page;
    page.key = "page";
    page.title = "Page";
    const PaperSize size = paperSize(paper);
    page.drawing.extent = {0, 0, size.width.toMm(), size.height.toMm()};
    page.drawing.marks = std::move(marks);
    return page;
}

/// Lengths in mm of all level two-point lines of an SVG that poppler made of a PDF.
std::vector<double> levelLines(const QByteArray& svg) {
    std::vector<double> lengths;
    QXmlStreamReader reader(svg);
    static const QRegularExpression line(QStringLiteral(
        "M\\s*([-0-9.]+)\\s+([-0-9.]+)\\s*L\\s*([-0-9.]+)\\s+([-0-9.]+)\\s*(?=M|$)"));
    static const QRegularExpression matrix(
        QStringLiteral("matrix\\(([-0-9.e]+),\\s*([-0-9.e]+),\\s*([-0-9.e]+),\\s*([-0-9.e]+),\\s*(["
                       "-0-9.e]+),\\s*([-0-9.e]+)\\)"));
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement || reader.name() != u"path") {
            continue;
        }
        QTransform transform;
        const auto turned =
            matrix.match(reader.attributes().value(QStringLiteral("transform")).toString());
        if (turned.hasMatch()) {
            const auto n = [&](int i) { return turned.captured(i).toDouble(); };
            transform = QTransform(n(1), n(2), n(3), n(4), n(5), n(6));
        }
        auto shapes =
            line.globalMatch(reader.attributes().value(QStringLiteral("d")).toString().trimmed());
        while (shapes.hasNext()) {
            const auto shape = shapes.next();
            const auto n = [&](int i) { return shape.captured(i).toDouble(); };
            const QPointF from = transform.map(QPointF(n(1), n(2)));
            const QPointF to = transform.map(QPointF(n(3), n(4)));
            if (std::abs(from.y() - to.y()) < 0.01) {
                lengths.push_back(std::abs(to.x() - from.x()) * mmPerPoint);
            }
        }
    }
    return lengths;
}

int countNear(const std::vector<double>& lengths, double wanted, double slack) {
    return static_cast<int>(std::count_if(lengths.begin(), lengths.end(), [&](double length) {
        return std::abs(length - wanted) <= slack;
    }));
}

Sample sampleNamed(const std::string& name) {
    for (Sample& sample : samples()) {
        if (sample.name == name) {
            return sample;
        }
    }
    throw std::runtime_error(name);
}

/// How far two pictures differ, 0 to 255 a channel, when looked at from so far away that
/// antialiasing does not count: mean over the page, and the worst place.
struct Difference {
    double mean = 0;
    int worst = 0;
};
Difference difference(const QImage& sharpA, const QImage& sharpB) {
    const QSize coarse(105, 148);
    const QImage a = sharpA.scaled(coarse, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    const QImage b = sharpB.scaled(coarse, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    Difference result;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            const QRgb p = a.pixel(x, y);
            const QRgb q = b.pixel(x, y);
            for (const int d : {qRed(p) - qRed(q), qGreen(p) - qGreen(q), qBlue(p) - qBlue(q)}) {
                result.mean += std::abs(d) / (3.0 * a.width() * a.height());
                result.worst = std::max(result.worst, std::abs(d));
            }
        }
    }
    return result;
}

QImage onWhite(QSize size) {
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    return image;
}

}  // namespace

// Measured with poppler, which shares no code with Qt's PDF writer.
TEST_F(Pdf, KeepsAHundredMillimetres) {
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        const Page page =
            barePage(paper, {Line{{50, 50}, {150, 50}, {.line = Ink::Text, .lineWidth = 0.2}}});
        const QString pdf =
            write(QStringLiteral("bar.pdf"), toPdf({page}, paper, QStringLiteral("Bar")));
        const auto lengths = levelLines(
            run(QStringLiteral("pdftocairo"), {QStringLiteral("-svg"), pdf, QStringLiteral("-")}));
        EXPECT_EQ(countNear(lengths, 100, 0.01), 1);
    }
}

TEST_F(Pdf, HasTrueCheckBarsOnTheMachineSettings) {
    const Sample sample = sampleNamed("hut-draughts");
    const Job job = jobOf(sample.project);
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        const std::vector<Page> pages = sheets(sample.project, job, paper);
        const QString pdf =
            write(QStringLiteral("sheets.pdf"), toPdf(pages, paper, QStringLiteral("x")));
        const auto settings = std::find_if(pages.begin(), pages.end(), [](const Page& page) {
            return page.key == "machine-settings";
        });
        ASSERT_NE(settings, pages.end());
        const QString page = QString::number(settings - pages.begin() + 1);
        const auto lengths = levelLines(run(
            QStringLiteral("pdftocairo"), {QStringLiteral("-svg"), QStringLiteral("-f"), page,
                                           QStringLiteral("-l"), page, pdf, QStringLiteral("-")}));
        EXPECT_EQ(countNear(lengths, 100, 0.01), 1);
        EXPECT_EQ(countNear(lengths, 101.6, 0.01), 1);
        const QByteArray text = run(QStringLiteral("pdftotext"),
                                    {QStringLiteral("-f"), page, pdf, QStringLiteral("-")});
        EXPECT_TRUE(text.contains("Print at 100 %"));
        EXPECT_TRUE(text.contains("100 mm"));
        EXPECT_TRUE(text.contains("4 in"));
    }
}

// ISO 216 A4 is 595.28 x 841.89 pt; US Letter is 612 x 792 pt. Qt writes whole points.
TEST_F(Pdf, HasThePagesAndTheirSize) {
    const Sample sample = sampleNamed("hut-chess");
    const Job job = jobOf(sample.project);
    const struct {
        Paper paper;
        const char* size;
    } wanted[] = {{Paper::A4, "595 x 842"}, {Paper::Letter, "612 x 792"}};
    for (const auto& one : wanted) {
        const std::vector<Page> pages = sheets(sample.project, job, one.paper);
        const QString pdf = write(QStringLiteral("sheets.pdf"),
                                  toPdf(pages, one.paper, QStringLiteral("A & B <x>")));
        const QString info = QString::fromUtf8(run(QStringLiteral("pdfinfo"), {pdf}));
        static const QRegularExpression count(QStringLiteral("Pages:\\s+(\\d+)"));
        EXPECT_EQ(count.match(info).captured(1).toUInt(), pages.size());
        EXPECT_TRUE(info.contains(QString::fromLatin1(one.size))) << info.toStdString();
        EXPECT_TRUE(info.contains(u"A & B <x>")) << info.toStdString();
    }
}

TEST_F(Pdf, SaysEveryMachineNumberAsItIsWritten) {
    for (Sample& sample : samples()) {
        for (const Notation& notation : {Notation::millimetres(), Notation::inches()}) {
            sample.project.notation = notation;
            const Job job = jobOf(sample.project);
            const QString pdf =
                write(QStringLiteral("sheets.pdf"), toPdf(sheets(sample.project, job, Paper::A4),
                                                          Paper::A4, QStringLiteral("x")));
            const QByteArray text = run(QStringLiteral("pdftotext"),
                                        {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
            for (const Length number : machineNumbers(job.steps)) {
                EXPECT_TRUE(text.contains(QByteArray::fromStdString(format(number, notation))))
                    << sample.name << ": " << format(number, notation);
            }
        }
    }
}

TEST_F(Pdf, HasNoImages) {
    const Sample sample = sampleNamed("hut-draughts");
    const Job job = jobOf(sample.project);
    const QByteArray bytes =
        toPdf(sheets(sample.project, job, Paper::A4), Paper::A4, QStringLiteral("x"));
    EXPECT_FALSE(bytes.contains("/Subtype /Image"));
    const QString pdf = write(QStringLiteral("sheets.pdf"), bytes);
    EXPECT_EQ(run(QStringLiteral("pdfimages"), {QStringLiteral("-list"), pdf}).count('\n'),
              2);  // its head
}

namespace {

/// The time zone of this process while it lives.
class Zone {
public:
    explicit Zone(const char* name) { set(name); }
    ~Zone() { set(before_); }
    Zone(const Zone&) = delete;
    Zone& operator=(const Zone&) = delete;

private:
    static void set(const QByteArray& name) {
        qputenv("TZ", name);
        tzset();
    }
    QByteArray before_ = qgetenv("TZ");
};

}  // namespace

// Qt writes the zone into the file, in one character or in seven.
TEST_F(Pdf, IsTheSameInEveryTimeZone) {
    const Page page = barePage(Paper::A4, {Line{{50, 50}, {150, 50}, {.line = Ink::Text}}});
    const auto written = [&](const char* zone) {
        const Zone here(zone);
        return toPdf({page}, Paper::A4, QStringLiteral("Bar"));
    };
    const QByteArray greenwich = written("UTC0");
    // Names are of POSIX: what is behind Greenwich has a plus.
    EXPECT_TRUE(written("IST-5:30") == greenwich);
    EXPECT_TRUE(written("NST+3:30") == greenwich);
    EXPECT_TRUE(greenwich.contains("/CreationDate (D:20000101000000Z)"));
}

// Every entry of the table of offsets leads to its object (ISO 32000-1, 7.5.4).
TEST_F(Pdf, HasATrueTableOfOffsetsInEveryTimeZone) {
    for (const char* zone : {"UTC0", "IST-5:30", "NST+3:30"}) {
        const Zone here(zone);
        const QByteArray bytes =
            toPdf({barePage(Paper::A4, {})}, Paper::A4, QStringLiteral("Nothing"));
        const qsizetype start = bytes.lastIndexOf("startxref\n");
        const QByteArrayList lines =
            bytes.mid(bytes.mid(start).split('\n').at(1).toLongLong()).split('\n');
        ASSERT_EQ(lines.at(0).trimmed(), "xref");
        const int count = lines.at(1).split(' ').at(1).toInt();
        ASSERT_GT(count, 5);
        for (int i = 1; i < count; ++i) {
            const QByteArray line = lines.at(2 + i);
            if (line.contains(" n")) {
                const QByteArray wanted = QByteArray::number(i) + " 0 obj";
                EXPECT_EQ(bytes.mid(line.left(10).toLongLong(), wanted.size()), wanted) << zone;
            }
        }
    }
}

TEST_F(Files, AreTheSameBytesEveryTime) {
    const Sample sample = sampleNamed("hut-draughts");
    const Job job = jobOf(sample.project);
    const std::vector<Page> pages = sheets(sample.project, job, Paper::A4);
    const QByteArray pdf = toPdf(pages, Paper::A4, QStringLiteral("Sheets"));
    EXPECT_EQ(pdf, toPdf(pages, Paper::A4, QStringLiteral("Sheets")));
    QByteArray svg;
    for (const Page& page : pages) {
        const QByteArray once = toSvg(page.drawing, QStringLiteral("Sheets"), paperTheme());
        EXPECT_EQ(once, toSvg(page.drawing, QStringLiteral("Sheets"), paperTheme()));
        svg += once;
    }
    // This same test in another process writes its bytes where it is told to.
    const QString wanted = qEnvironmentVariable("KW_BYTES_TO");
    if (!wanted.isEmpty()) {
        EXPECT_EQ(writeFileAtomically(wanted, pdf + svg), QString());
        return;
    }
    QProcess other;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.remove(QStringLiteral("QT_HASH_SEED"));
    environment.insert(QStringLiteral("KW_BYTES_TO"), path(QStringLiteral("other")));
    other.setProcessEnvironment(environment);
    other.start(QCoreApplication::applicationFilePath(),
                {QStringLiteral("--gtest_filter=Files.AreTheSameBytesEveryTime")});
    ASSERT_TRUE(other.waitForFinished(120'000));
    EXPECT_EQ(other.exitCode(), 0);
    QFile file(path(QStringLiteral("other")));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll() == pdf + svg);
}

TEST_F(Svg, IsWellFormedWithoutImagesOrClips) {
    for (const Sample& sample : samples()) {
        const Job job = jobOf(sample.project);
        for (const Page& page : sheets(sample.project, job, Paper::Letter)) {
            const QByteArray svg =
                toSvg(page.drawing, QStringLiteral("A & B <x> \"q\""), paperTheme());
            EXPECT_FALSE(svg.contains("<image"));
            EXPECT_FALSE(svg.contains("clip"));
            QXmlStreamReader reader(svg);
            QString title;
            while (!reader.atEnd()) {
                if (reader.readNext() == QXmlStreamReader::StartElement) {
                    if (reader.name() == u"title") {
                        title = reader.readElementText();
                    } else if (reader.name() == u"svg") {
                        EXPECT_EQ(reader.attributes().value(QStringLiteral("width")), u"215.9mm");
                        EXPECT_EQ(reader.attributes().value(QStringLiteral("height")), u"279.4mm");
                        EXPECT_EQ(reader.attributes().value(QStringLiteral("viewBox")),
                                  u"0 0 215.9 279.4");
                    }
                }
            }
            EXPECT_FALSE(reader.hasError())
                << page.key << ": " << reader.errorString().toStdString();
            EXPECT_EQ(title, u"A & B <x> \"q\"");
        }
    }
}

TEST_F(Svg, LooksLikeThePicture) {
    const Sample sample = sampleNamed("mortar-brick-block");
    const Job job = jobOf(sample.project);
    constexpr double pixelsPerMm = 8;
    for (const Page& page : sheets(sample.project, job, Paper::A4)) {
        const QImage picture = toImage(page.drawing, pixelsPerMm, paperTheme());
        QImage first = onWhite(picture.size());
        QPainter(&first).drawImage(0, 0, picture);
        QSvgRenderer renderer(toSvg(page.drawing, QStringLiteral("x"), paperTheme()));
        ASSERT_TRUE(renderer.isValid());
        QImage second = onWhite(picture.size());
        {
            QPainter painter(&second);
            painter.setRenderHint(QPainter::Antialiasing);
            renderer.render(&painter, QRectF(0, 0, 210 * pixelsPerMm, 297 * pixelsPerMm));
        }
        const Difference seen = difference(first, second);
        EXPECT_LT(seen.mean, 0.8) << page.key;
        EXPECT_LT(seen.worst, 80) << page.key;  // the reader kerns, which shifts words a little
        EXPECT_GT(difference(first, onWhite(picture.size())).worst, 100) << page.key;
    }
}

TEST_F(Pdf, LooksLikeThePicture) {
    const Sample sample = sampleNamed("hut-draughts");
    const Job job = jobOf(sample.project);
    const std::vector<Page> pages = sheets(sample.project, job, Paper::Letter);
    const QString pdf =
        write(QStringLiteral("sheets.pdf"), toPdf(pages, Paper::Letter, QStringLiteral("x")));
    run(QStringLiteral("pdftoppm"),
        {QStringLiteral("-r"), QStringLiteral("203.2"), QStringLiteral("-png"),
         QStringLiteral("-singlefile"), pdf, path(QStringLiteral("page"))});
    const QImage second(path(QStringLiteral("page.png")));
    const QImage picture = toImage(pages.front().drawing, 8, paperTheme());
    ASSERT_LE(std::abs(second.width() - picture.width()), 1);
    QImage first = onWhite(picture.size());
    QPainter(&first).drawImage(0, 0, picture);
    QImage cut = onWhite(picture.size());
    QPainter(&cut).drawImage(0, 0, second);
    const Difference seen = difference(first, cut);
    EXPECT_LT(seen.mean, 1.2);
    EXPECT_LT(seen.worst, 40);
}

TEST_F(Pdf, PrintsAtTrueSizeFromTheCornerOfThePaper) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    const QString pdf = path(QStringLiteral("printed.pdf"));
    printer.setOutputFileName(pdf);
    const std::vector<Page> pages{
        barePage(Paper::A4, {Line{{50, 50}, {150, 50}, {.line = Ink::Text, .lineWidth = 0.2}}}),
        barePage(Paper::A4, {Line{{20, 50}, {60, 50}, {.line = Ink::Text, .lineWidth = 0.2}}})};
    ASSERT_TRUE(print(printer, pages, Paper::A4));
    const QByteArray svg =
        run(QStringLiteral("pdftocairo"), {QStringLiteral("-svg"), QStringLiteral("-l"),
                                           QStringLiteral("1"), pdf, QStringLiteral("-")});
    EXPECT_EQ(countNear(levelLines(svg), 100, 0.01), 1);
    EXPECT_TRUE(run(QStringLiteral("pdfinfo"), {pdf}).contains("Pages:           2"));
    run(QStringLiteral("pdftoppm"),
        {QStringLiteral("-r"), QStringLiteral("254"), QStringLiteral("-png"),
         QStringLiteral("-singlefile"), pdf, path(QStringLiteral("page"))});
    const QImage image(path(QStringLiteral("page.png")));
    EXPECT_LT(qGray(image.pixel(505, 500)), 128);  // 10 pixels a mm: the line begins at (50, 50) mm
    EXPECT_GT(qGray(image.pixel(490, 500)), 128);
    EXPECT_GT(qGray(image.pixel(505, 510)), 128);
}

TEST(Png, SaysItsScale) {
    Drawing drawing;
    drawing.extent = {10, 20, 30, 15};
    drawing.marks.emplace_back(Rectangle{{10, 20, 30, 15}, 0, {.fill = Ink::Band}});
    QImage image;
    ASSERT_TRUE(image.loadFromData(toPng(drawing, 5, paperTheme()), "PNG"));
    EXPECT_EQ(image.size(), QSize(150, 75));
    EXPECT_EQ(image.dotsPerMeterX(), 5000);
    EXPECT_EQ(image.pixelColor(2, 2), paperTheme().band);
    EXPECT_EQ(image.pixelColor(147, 72), paperTheme().band);
}

TEST_F(AtomicFile, ReplacesAndReports) {
    const QString file = write(QStringLiteral("a.txt"), "old");
    EXPECT_EQ(writeFileAtomically(file, "new"), QString());
    QFile read(file);
    ASSERT_TRUE(read.open(QIODevice::ReadOnly));
    EXPECT_EQ(read.readAll(), "new");
    const QString nowhere = path(QStringLiteral("no/such/folder/a.txt"));
    const QString fault = writeFileAtomically(nowhere, "x");
    EXPECT_TRUE(fault.contains(QDir::toNativeSeparators(nowhere))) << fault.toStdString();
    EXPECT_FALSE(QFileInfo::exists(nowhere));
    const QString folder = path(QStringLiteral("folder"));
    ASSERT_TRUE(QDir().mkpath(folder));
    EXPECT_FALSE(writeFileAtomically(folder, "x").isEmpty());
    EXPECT_TRUE(QFileInfo(folder).isDir());
}

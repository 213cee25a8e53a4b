// The planks that are cut, drawn in their wood with numbered cuts; below the chosen one, its cuts
// in words. A strip is dragged to another plank to pin it there. By keys: left and right go from
// strip to strip, up and down from plank to plank, Enter or the menu key opens what can be done
// with it.
#pragma once

#include "core/sheets/cutwords.h"
#include "core/sheets/plankview.h"
#include "ui/document/sawyer.h"

#include <QAbstractScrollArea>

#include <set>
#include <string>

QT_BEGIN_NAMESPACE
class QMenu;
QT_END_NAMESPACE

namespace kerfwright {

class CutsView : public QAbstractScrollArea {
    Q_OBJECT

public:
    explicit CutsView(QWidget* parent = nullptr);

    /// Null: nothing is laid out. The choice is kept where its strip is still there.
    void setSawn(const SawnPtr& sawn);
    const SawnPtr& sawn() const { return sawn_; }
    void setStale(bool stale);
    /// What stands below the last plank and scrolls with them. The view takes it over.
    void setFoot(QWidget* foot);

    int plankCount() const { return static_cast<int>(planks_.size()); }
    /// Where a plank or a strip is seen, in the viewport. `plank` counts those shown: first the cut
    /// ones in the order of cutting, then those that nothing is cut from.
    QRectF plankRect(int plank) const;
    QRectF stripRect(int plank, int strip) const;
    int stripCount(int plank) const {
        return static_cast<int>(planks_[static_cast<std::size_t>(plank)].view.places.strips.size());
    }
    QString stripName(int plank, int strip) const;
    /// Labels of the planks shown.
    QString plankLabel(int plank) const;
    void choose(int plank, int strip);
    int chosenPlank() const { return plank_; }
    int chosenStrip() const { return strip_; }
    /// Strips that belong to what is chosen elsewhere are framed, and the others veiled.
    void setMarked(const std::set<std::string>& parts);
    bool isMarked(int plank, int strip) const;
    void letGo();
    /// What can be done with the chosen strip; null where none is chosen.
    QMenu* stripMenu();

Q_SIGNALS:
    /// By mouse or keys.
    void stripChosen(const QString& strip);
    void plankChosen(const QString& plank);
    /// Esc was pressed.
    void left();
    void pinAsked(const QString& strip, const QString& plank);
    void unpinAsked(const QString& strip);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;

private:
    static constexpr double cutsScale = 3.7;  // pixels for a mm of the drawing
    static constexpr int cutsSide = 16;       // pixels beside a plank
    static constexpr int cutsGap = 22;        // pixels between planks

    struct Shown {
        int cut = -1;  ///< of the layout; -1: nothing is cut from it
        int rack = 0;  ///< of the rack
        PlankView view;
        std::vector<CutRow> rows;
        int top = 0;  ///< of its heading, on the whole page
        int bottom = 0;
        QPointF corner;  ///< of the drawing, on the whole page
    };

    void layOut();
    void place();
    void placeFoot();
    void showInFoot(const QWidget* focus);
    int listHeight(const Shown& shown) const;
    const Plank& plankOf(const Shown& shown) const;
    const WantedStrips* wantedOf(int plank, int strip) const;
    bool takes(const Shown& shown, const WantedStrips& wanted) const;
    std::pair<int, int> stripAt(QPointF at) const;
    int plankAt(QPointF at) const;
    void paintPlank(QPainter& painter, const Shown& shown, int number) const;
    void report();
    void showChosen();
    void tellChosen();
    void paintMarks(QPainter& painter, const Shown& shown, int number) const;

    SawnPtr sawn_;
    StripNames names_;
    std::vector<Shown> planks_;
    QWidget* foot_ = nullptr;
    int footHeight_ = 0;
    int height_ = 0;  ///< of the whole page
    int plank_ = -1;
    int strip_ = -1;
    QString chosenName_;  ///< of the strip that is chosen, also while no layout has it
    std::set<std::string> marked_;
    bool picked_ = false;  ///< the maker chose a plank or a strip
    bool stale_ = false;
    bool pressed_ = false;
    bool dragging_ = false;
    int pressedScroll_ = 0;
    QPointF from_, at_;
};

}  // namespace kerfwright

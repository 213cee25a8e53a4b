// The cut sheets, page under page, as wide as there is room.
#pragma once

#include "core/sheets/sheets.h"

#include <QAbstractScrollArea>

#include <vector>

namespace kerfwright {

class SheetsPreview : public QAbstractScrollArea {
    Q_OBJECT

public:
    explicit SheetsPreview(QWidget* parent = nullptr);
    /// What is said where there are no pages.
    void setEmptyText(const QString& text);
    const QString& emptyText() const { return emptyText_; }
    void setPages(std::vector<Page> pages, Paper paper);
    const std::vector<Page>& pages() const { return pages_; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void layOut();
    QRectF pageRect(int index) const;

    std::vector<Page> pages_;
    QString emptyText_;
    Paper paper_ = Paper::A4;
    double scale_ = 1;  ///< pixels per mm
};

}  // namespace kerfwright

// The lines of a quote, one below the other, each with an "=" that opens its working in place.
#pragma once

#include "core/bench/quote.h"
#include "ui/window/keylist.h"

#include <QAbstractListModel>

#include <set>
#include <string>
#include <vector>

namespace kerfwright {

class ReckoningModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    int rowCount(const QModelIndex& parent = QModelIndex()) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    const QuoteLine& line(int row) const { return lines_[static_cast<std::size_t>(row)]; }
    const QString& amount(int row) const { return amounts_[static_cast<std::size_t>(row)]; }
    void setLines(std::vector<QuoteLine> lines, const std::string& currency);

private:
    std::vector<QuoteLine> lines_;
    std::vector<QString> amounts_;
};

class LinePainter;

/// As high as its lines: it scrolls with what stands round it.
class ReckoningList : public KeyList {
    Q_OBJECT

public:
    explicit ReckoningList(QWidget* parent = nullptr);

    void setLines(std::vector<QuoteLine> lines, const std::string& currency);
    int count() const { return model_->rowCount(); }
    const QuoteLine& line(int row) const { return model_->line(row); }
    const QString& amount(int row) const { return model_->amount(row); }
    bool isOpen(int row) const { return open_.contains(row); }
    /// Whether it has a working to open.
    bool hasWorking(int row) const;
    /// What leads to the entry that the line comes from; empty where none does.
    QString entryWords(int row) const;
    /// Where the "=" and the way to the entry are painted, in the viewport; the latter only while
    /// the working is open.
    QRect workingRect(int row) const;
    QRect entryRect(int row) const;
    void toggle(int row);
    /// The lines are of a plan that is out of date.
    void setStale(bool stale);
    bool isStale() const { return stale_; }
    /// Leads to the entry that the line comes from, where there is one.
    void askEntry(int row);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    /// The maker asked for the entry with that key.
    void settingAsked(const QString& key);
    /// The maker asked for the price of the wood with that name.
    void woodAsked(const QString& name);
    /// The keys stand on that place now.
    void shown(const QRect& place);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    void relayout();

    ReckoningModel* model_;
    LinePainter* painter_;
    std::set<int> open_;
    bool stale_ = false;
};

}  // namespace kerfwright

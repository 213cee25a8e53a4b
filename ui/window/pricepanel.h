// What the board costs to make and what to ask for it: the entries, the reckoning as it stands, and
// the two papers, one for the customer and one for the maker.
#pragma once

#include "core/bench/quote.h"
#include "core/wood/timbercost.h"
#include "ui/document/planner.h"
#include "ui/window/paperout.h"

#include <QWidget>

#include <functional>
#include <optional>

QT_BEGIN_NAMESPACE
class QLabel;
class QPushButton;
class QScrollArea;
QT_END_NAMESPACE

namespace kerfwright {

class Dialogs;
class FormSection;
class PriceForm;
class ReckoningList;
class Segmented;
class WrappedLabel;

class PricePanel : public QWidget {
    Q_OBJECT

public:
    PricePanel(Document& document, Planner& planner, Dialogs& dialogs, QWidget* parent = nullptr);

    /// What the timber of a plan comes to; empty while that is not known.
    using TimberSource = std::function<std::optional<TimberCost>(const Planned&)>;
    /// Without a source, and while it knows nothing, the strips count as they are sawn.
    void setTimberSource(TimberSource source);
    /// Reckons anew: also when the source has found another cost.
    void refresh();

    void savePdf();
    void print();
    ReckoningList* reckoning() const { return list_; }

Q_SIGNALS:
    /// "Saved the quote to …"
    void told(const QString& words);
    /// The maker asked for the price of the wood with that name.
    void woodAsked(const QString& name);

protected:
    void showEvent(QShowEvent* event) override;

private:
    bool isReady() const { return planner_.state() == Planner::State::Current; }
    Quote reckon() const;
    bool forCustomer() const;
    Paper paper() const;
    std::vector<Page> pages() const;
    PaperWork work() const;
    bool readyOrTold();
    void showTotal(const Quote& made);

    Document& document_;
    Planner& planner_;
    Dialogs& dialogs_;
    TimberSource timber_;
    Segmented* reader_;
    std::vector<QPushButton*> buttons_;
    QLabel* total_;
    QLabel* each_;
    WrappedLabel* missing_;
    QScrollArea* area_;
    FormSection* section_;
    PriceForm* form_;
    ReckoningList* list_;
    WrappedLabel* rule_;
    bool seen_ = false;
};

}  // namespace kerfwright

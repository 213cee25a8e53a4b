#include "ui/window/woodchooser.h"

#include "ui/document/text.h"
#include "ui/window/icons.h"
#include "ui/window/popupplace.h"
#include "ui/window/tones.h"
#include "ui/window/woodchip.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

namespace kerfwright {

WoodChooser::WoodChooser(const std::vector<Wood>& taken, QWidget* parent)
    : QFrame(parent, Qt::Popup)
    , search_(new QLineEdit(this))
    , list_(new QListWidget(this)) {
    setObjectName(QStringLiteral("woodChooser"));
    setAccessibleName(tr("Catalogue of woods"));
    setAttribute(Qt::WA_DeleteOnClose);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(8, 8, 8, 8);
    column->setSpacing(8);
    search_->setObjectName(QStringLiteral("woodSearch"));
    search_->setPlaceholderText(tr("Find a wood"));
    search_->setAccessibleName(tr("Find a wood"));
    search_->installEventFilter(this);
    list_->setObjectName(QStringLiteral("woodCatalogue"));
    list_->setAccessibleName(tr("Woods"));
    list_->setMouseTracking(true);
    list_->setIconSize(QSize(18, 18));
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->installEventFilter(this);
    column->addWidget(search_);
    column->addWidget(list_);
    auto* own = new QToolButton(this);
    own->setObjectName(QStringLiteral("ownWood"));
    own->setText(tr("A wood of your own…"));
    own->setAccessibleName(tr("A wood of your own"));
    own->setIcon(lineIcon(QStringLiteral("add")));
    own->setIconSize(QSize(16, 16));
    own->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    own->setAutoRaise(true);
    own->setFocusPolicy(Qt::StrongFocus);
    column->addWidget(own, 0, Qt::AlignLeft);
    connect(own, &QToolButton::clicked, this, [this] {
        hide();
        Q_EMIT ownAsked();
        close();
    });
    const std::vector<Wood>& all = woodCatalogue();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (woodIndex(taken, all[i].key) < 0) {
            auto* item =
                new QListWidgetItem(woodChip(all[i], *this), toQt(spokenName(all[i])), list_);
            item->setData(Qt::UserRole, static_cast<int>(i));
        }
    }
    setFixedSize(256, std::min(456, 92 + std::max(1, list_->count()) * 25));
    connect(search_, &QLineEdit::textChanged, this, &WoodChooser::filter);
    connect(list_, &QListWidget::itemEntered, list_,
            [this](QListWidgetItem* item) { list_->setCurrentItem(item); });
    connect(list_, &QListWidget::currentRowChanged, this,
            [this](int row) { Q_EMIT previewed(woodOf(row)); });
    connect(list_, &QListWidget::itemClicked, this,
            [this](QListWidgetItem* item) { accept(list_->row(item)); });
    connect(list_, &QListWidget::itemActivated, this,
            [this](QListWidgetItem* item) { accept(list_->row(item)); });
}

const Wood* WoodChooser::woodOf(int row) const {
    const QListWidgetItem* item = list_->item(row);
    return item == nullptr
               ? nullptr
               : &woodCatalogue()[static_cast<std::size_t>(item->data(Qt::UserRole).toInt())];
}

void WoodChooser::accept(int row) {
    if (const Wood* wood = woodOf(row); wood != nullptr && isVisible()) {
        const Wood picked = takenOver(*wood);
        hide();  // takes the preview back first
        Q_EMIT chosen(picked);
        close();
    }
}

void WoodChooser::filter(const QString& text) {
    int first = -1;
    for (int row = 0; row < list_->count(); ++row) {
        const bool fits = list_->item(row)->text().contains(text, Qt::CaseInsensitive);
        list_->item(row)->setHidden(!fits);
        if (fits && first < 0) {
            first = row;
        }
    }
    list_->setCurrentRow(first);
}

bool WoodChooser::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
            accept(list_->currentRow());
            return true;
        }
        if (watched == search_ && (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up)) {
            QCoreApplication::sendEvent(list_, event);
            return true;
        }
    }
    return QFrame::eventFilter(watched, event);
}

void WoodChooser::openBeside(QWidget* button) {
    placeBeside(*this, *button);
    show();
    search_->setFocus();
}

void WoodChooser::hideEvent(QHideEvent* event) {
    Q_EMIT previewed(nullptr);
    QFrame::hideEvent(event);
}

void WoodChooser::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    painter.fillRect(rect(), mixed(tones.edge, tones.text, 0.15));
    painter.fillRect(rect().adjusted(1, 1, -1, -1), tones.surface);
}

}  // namespace kerfwright

#include "ui/window/formsection.h"

#include "ui/window/entryfield.h"
#include "ui/window/faultnote.h"
#include "ui/window/focusring.h"
#include "ui/window/tones.h"
#include "ui/window/wrappedlabel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

namespace kerfwright {

FormHead::FormHead(const QString& title, bool folds, QWidget* parent)
    : QAbstractButton(parent)
    , folds_(folds) {
    setText(title);
    setAccessibleName(title);
    setCheckable(folds);
    setFocusPolicy(folds ? Qt::TabFocus : Qt::NoFocus);
    if (folds) {
        setCursor(Qt::PointingHandCursor);
    }
}

void FormHead::paintEvent(QPaintEvent*) {
    const Tones tones = tonesOf(palette());
    QPainter painter(this);
    QFont font = painter.font();
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(tones.text);
    painter.drawText(rect(), Qt::AlignVCenter | Qt::AlignLeft, text());
    painter.setRenderHint(QPainter::Antialiasing);
    if (folds_) {
        QPolygonF arrow;
        const bool mirrored = isRightToLeft();
        const QPointF middle(mirrored ? 10.0 : width() - 10.0, height() / 2.0);
        const double on = mirrored ? -1 : 1;  // towards the end of the line
        if (isChecked()) {
            arrow << middle + QPointF(-4.5, -2) << middle + QPointF(0, 2.5)
                  << middle + QPointF(4.5, -2);
        } else {
            arrow << middle + QPointF(-2 * on, -4.5) << middle + QPointF(2.5 * on, 0)
                  << middle + QPointF(-2 * on, 4.5);
        }
        painter.setPen(QPen(tones.quiet, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.drawPolyline(arrow);
    }
    if (hasFocus()) {
        paintFocusRing(painter,
                       isRightToLeft() ? rect().adjusted(0, 0, 6, 0) : rect().adjusted(-6, 0, 0, 0),
                       tones);
    }
}

FormSection::FormSection(const QString& title, bool folds, QWidget* parent)
    : QWidget(parent)
    , head_(new FormHead(title, folds, this))
    , body_(new QWidget(this))
    , rows_(new QVBoxLayout(body_)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(head_);
    column->addWidget(body_);
    rows_->setContentsMargins(0, 0, 0, 4);
    rows_->setSpacing(6);
    body_->setVisible(!folds);
    wasOpen_ = !folds;
    connect(head_, &QAbstractButton::toggled, this, [this](bool open) {
        if (open && !wasOpen_) {
            wasOpen_ = true;
            Q_EMIT firstOpened();
        }
        body_->setVisible(open);
    });
}

void FormSection::setOpen(bool open) {
    if (head_->isCheckable()) {
        head_->setChecked(open);
    }
}

bool FormSection::isOpen() const {
    return !head_->isCheckable() || head_->isChecked();
}

void FormSection::add(QWidget* widget) {
    rows_->addWidget(widget);
}

QLabel* FormSection::addRow(const QString& label, QWidget* field) {
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    auto* name = new WrappedLabel(body_);
    name->setText(label);
    name->setBuddy(field);
    name->setFixedWidth(labelWidth_);
    name->setMinimumHeight(28);
    row->addWidget(name, 0, Qt::AlignTop);
    row->addWidget(field, 1);
    rows_->addLayout(row);
    if (auto* entry = qobject_cast<EntryField*>(field)) {
        auto* words = new FaultNote(body_);
        entry->setFaultNote(words);
        rows_->addWidget(words);
    }
    return name;
}

}  // namespace kerfwright

#include "core/words/plurals.h"

#include <array>
#include <cctype>
#include <charconv>

namespace kerfwright {
namespace {

struct Operator {
    std::string_view sign;
    int rank;
};
// Longer signs before those they begin with.
constexpr std::array operators = {
    Operator{"||", 1}, Operator{"&&", 2}, Operator{"==", 3}, Operator{"!=", 3}, Operator{"<=", 4},
    Operator{">=", 4}, Operator{"<", 4},  Operator{">", 4},  Operator{"+", 5},  Operator{"-", 5},
    Operator{"*", 6},  Operator{"/", 6},  Operator{"%", 6},
};

/// Works an expression out while it reads it. Both branches of a choice are read, so a division by
/// 0 is no fault by itself: its value is 0.
class Evaluation {
public:
    Evaluation(std::string_view text, long long n)
        : rest_(text)
        , n_(n) {}

    /// Nothing where the text is no expression.
    std::optional<long long> value() {
        const long long found = choice();
        return good_ && rest_.empty() ? std::optional(found) : std::nullopt;
    }

private:
    bool take(std::string_view sign) {
        if (!rest_.starts_with(sign)) {
            return false;
        }
        rest_.remove_prefix(sign.size());
        return true;
    }

    long long choice() {
        // The catalogue comes with the program, but a damaged one must not use up the stack.
        if (++depth_ > 100) {
            good_ = false;
            return 0;
        }
        const long long condition = sum(1);
        long long found = condition;
        if (good_ && take("?")) {
            const long long yes = choice();
            good_ = good_ && take(":");
            const long long no = good_ ? choice() : 0;
            found = condition != 0 ? yes : no;
        }
        --depth_;
        return found;
    }

    long long sum(int rank) {
        long long left = operand();
        while (good_) {
            const Operator* next = nullptr;
            for (const Operator& one : operators) {
                if (rest_.starts_with(one.sign)) {
                    next = &one;
                    break;
                }
            }
            if (next == nullptr || next->rank < rank) {
                break;
            }
            rest_.remove_prefix(next->sign.size());
            left = joined(next->sign, left, sum(next->rank + 1));
        }
        return left;
    }

    static long long joined(std::string_view sign, long long left, long long right) {
        if (sign == "||")
            return left != 0 || right != 0;
        if (sign == "&&")
            return left != 0 && right != 0;
        if (sign == "==")
            return left == right;
        if (sign == "!=")
            return left != right;
        if (sign == "<=")
            return left <= right;
        if (sign == ">=")
            return left >= right;
        if (sign == "<")
            return left < right;
        if (sign == ">")
            return left > right;
        long long found = 0;
        bool over = false;
        if (sign == "+") {
            over = __builtin_add_overflow(left, right, &found);
        } else if (sign == "-") {
            over = __builtin_sub_overflow(left, right, &found);
        } else if (sign == "*") {
            over = __builtin_mul_overflow(left, right, &found);
        } else if (right > 0) {
            found = sign == "/" ? left / right : left % right;
        }
        return over ? 0 : found;
    }

    long long operand() {
        if (take("!")) {
            return operand() == 0;
        }
        if (take("(")) {
            const long long inner = choice();
            good_ = good_ && take(")");
            return inner;
        }
        if (take("n")) {
            return n_;
        }
        long long number = 0;
        const auto [end, fault] =
            std::from_chars(rest_.data(), rest_.data() + rest_.size(), number);
        good_ = good_ && fault == std::errc{} && number >= 0;
        rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
        return number;
    }

    std::string_view rest_;
    long long n_;
    int depth_ = 0;
    bool good_ = true;
};

std::string_view between(std::string_view text, std::string_view begin) {
    const std::size_t at = text.find(begin);
    if (at == std::string_view::npos) {
        return {};
    }
    text.remove_prefix(at + begin.size());
    return text.substr(0, text.find(';'));
}

}  // namespace

std::optional<Plurals> Plurals::read(std::string_view rule) {
    std::string bare;
    for (const char c : rule) {
        if (std::isspace(static_cast<unsigned char>(c)) == 0) {
            bare += c;
        }
    }
    Plurals plurals;
    const std::string_view count = between(bare, "nplurals=");
    const auto [end, fault] =
        std::from_chars(count.data(), count.data() + count.size(), plurals.forms_);
    plurals.expression_ = between(bare, ";plural=");
    if (fault != std::errc{} || end != count.data() + count.size() || plurals.forms_ == 0 ||
        !Evaluation(plurals.expression_, 1).value()) {
        return std::nullopt;
    }
    return plurals;
}

std::size_t Plurals::form(long long count) const {
    const auto found = Evaluation(expression_, count).value();
    return found && *found >= 0 && static_cast<std::size_t>(*found) < forms_
               ? static_cast<std::size_t>(*found)
               : 0;
}

}  // namespace kerfwright

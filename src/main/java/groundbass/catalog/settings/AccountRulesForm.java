package groundbass.catalog.settings;

import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The rules for accounts as typed; an empty field is none. */
public record AccountRulesForm(String idleMonths, String age) {
    /** Fewer would end accounts between two courses. */
    private static final int FEWEST_MONTHS = 6;

    private static final int MOST_MONTHS = 120;
    private static final int LOWEST_AGE = 6;
    private static final int HIGHEST_AGE = 21;

    public AccountRulesForm {
        Objects.requireNonNull(idleMonths);
        Objects.requireNonNull(age);
    }

    /** The form that shows what is chosen now. */
    public static AccountRulesForm of(AccountRules rules) {
        return new AccountRulesForm(
                rules.idleMonths().map(String::valueOf).orElse(""),
                rules.age().map(String::valueOf).orElse(""));
    }

    /** The rules, or what is wrong with them. */
    public Outcome<AccountRules> read() {
        List<FieldProblem> problems = new ArrayList<>();
        var months = number("idleMonths", idleMonths, FEWEST_MONTHS, MOST_MONTHS, problems);
        var years = number("age", age, LOWEST_AGE, HIGHEST_AGE, problems);
        return problems.isEmpty() ? Outcome.done(new AccountRules(months, years)) : Outcome.refused(problems);
    }

    private static Optional<Integer> number(
            String field, String typed, int least, int most, List<FieldProblem> problems) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        boolean fits = text.matches("[0-9]{1,3}") && Integer.parseInt(text) >= least && Integer.parseInt(text) <= most;
        if (!fits) {
            problems.add(FieldProblem.of(
                    field, "catalog.problem.between", text, String.valueOf(least), String.valueOf(most)));
            return Optional.empty();
        }
        return Optional.of(Integer.valueOf(text));
    }
}

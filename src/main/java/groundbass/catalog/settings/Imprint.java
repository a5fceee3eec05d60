package groundbass.catalog.settings;

import groundbass.catalog.FieldChecks;
import groundbass.form.FieldProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Who answers for the site, as the site itself tells it.
 *
 * @param name      of who teaches, or of who runs the site
 * @param email     where they are written to, in sight of everybody
 * @param words     what they say of themselves
 * @param legal     what local law asks for: postal address, register, tax number
 * @param guardians from what age on students may sign in, and what younger ones need
 */
public record Imprint(String name, String email, String words, String legal, String guardians) {
    public static final Imprint EMPTY = new Imprint("", "", "", "", "");

    private static final int LONGEST_NAME = 200;
    private static final int LONGEST = 3500;
    private static final int LONGEST_LINE = 600;

    public Imprint {
        Objects.requireNonNull(name);
        Objects.requireNonNull(email);
        Objects.requireNonNull(words);
        Objects.requireNonNull(legal);
        Objects.requireNonNull(guardians);
    }

    /** Whether a reader learns who teaches and where to write: before that nothing goes out. */
    public boolean isComplete() {
        return !name.isBlank() && !email.isBlank();
    }

    /** What is wrong with it as typed. */
    List<FieldProblem> problems() {
        List<FieldProblem> problems = new ArrayList<>(FieldChecks.line("name", name, LONGEST_NAME));
        if (!FieldChecks.isEmail(email.strip())) {
            problems.add(FieldProblem.of("email", "catalog.problem.email", email));
        }
        problems.addAll(FieldChecks.text("words", words, LONGEST));
        problems.addAll(FieldChecks.text("legal", legal, LONGEST));
        problems.addAll(FieldChecks.text("guardians", guardians, LONGEST_LINE));
        return problems;
    }

    Imprint stripped() {
        return new Imprint(name.strip(), email.strip(), words.strip(), legal.strip(), guardians.strip());
    }
}

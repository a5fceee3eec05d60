package groundbass.catalog.educator;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import groundbass.catalog.FieldChecks;
import groundbass.effort.ConcurrencyLimit;
import groundbass.form.FieldProblem;
import groundbass.store.RandomId;
import java.text.Normalizer;
import java.time.Duration;
import java.util.List;

/**
 * Passwords as Argon2id digests (RFC 9106) with 19 MiB of memory, 2 passes and 1 lane: the first choice of the OWASP
 * Password Storage Cheat Sheet. A digest carries its own parameters and salt, so older ones stay readable when these
 * figures grow. Normalised first (NFKC, as NIST SP 800-63B advises), because two keyboards write one letter two ways.
 */
final class Passwords {
    private static final int MEMORY_KIB = 19 * 1024;
    private static final int PASSES = 2;
    private static final int LANES = 1;
    private static final int DIGEST_BYTES = 32;
    private static final int SALT_BYTES = 16;
    private static final long HEAP_EACH = 96L << 20;
    private static final int MOST_AT_ONCE = 8;
    private static final int SHORTEST = 12;
    private static final int LONGEST = 200;
    private static final Argon2Function ARGON2ID =
            Argon2Function.getInstance(MEMORY_KIB, PASSES, LANES, DIGEST_BYTES, Argon2.ID);

    /**
     * Each digest takes its memory from the heap while it is made. A quarter of a small heap is for that; beyond it one
     * waits, since nobody notices a moment, and a server without memory is noticed by all.
     */
    private static final ConcurrencyLimit TURNS =
            new ConcurrencyLimit(atOnce(Runtime.getRuntime().maxMemory()), 16, Duration.ofSeconds(4));

    private Passwords() {}

    /** How many digests are made at once with so many bytes of heap. */
    static int atOnce(long heap) {
        return (int) Math.max(1, Math.min(MOST_AT_ONCE, heap / HEAP_EACH));
    }

    /**
     * The digest of a password that nobody knows, to spend the same time on a mail address that nobody has. Made when
     * first needed, since it would take a tenth of the time that the program needs to start.
     */
    private static final class Nobody {
        static final String HASH = hash(RandomId.next());
    }

    static String hash(String password) {
        return TURNS.take(() -> Password.hash(normal(password))
                .addRandomSalt(SALT_BYTES)
                .with(ARGON2ID)
                .getResult());
    }

    static boolean matches(String password, String hash) {
        return password.length() <= LONGEST
                && TURNS.take(
                        () -> Password.check(normal(password), hash).with(Argon2Function.getInstanceFromHash(hash)));
    }

    /** Takes as long as {@link #matches} and tells nothing. */
    static void matchNobody(String password) {
        matches(password, Nobody.HASH);
    }

    /** @param own what everybody knows of whom the password is for: address, names; such words guard nothing */
    static List<FieldProblem> problems(String field, String password, List<String> own) {
        int length = password.codePointCount(0, password.length());
        if (length < SHORTEST) {
            return List.of(FieldProblem.of(field, "catalog.problem.password.short", SHORTEST));
        }
        var tooLong = FieldChecks.text(field, password, LONGEST);
        return tooLong.isEmpty()
                ? GuessedFirst.problem(field, normal(password), own).stream().toList()
                : tooLong;
    }

    private static String normal(String password) {
        return Normalizer.normalize(password, Normalizer.Form.NFKC);
    }
}

package groundbass.audience.student;

import groundbass.identity.Sha256;
import groundbass.post.EmailAddress;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Six digits that stand beside a mailed link, for whoever reads the mail on another device. So few can be guessed: only
 * the newest code of an address is good, as long as its link, and tries are counted for the address. Not shown by {@code
 * toString}.
 */
public record SignInCode(String digits) {
    private static final int MANY = 1_000_000;
    private static final Pattern SIX = Pattern.compile("[0-9]{6}");
    private static final Pattern BETWEEN = Pattern.compile("[\\s-]");
    private static final SecureRandom RANDOM = new SecureRandom();

    public SignInCode {
        if (!SIX.matcher(digits).matches()) {
            throw new IllegalArgumentException("a code has six digits");
        }
    }

    static SignInCode next() {
        return new SignInCode("%06d".formatted(RANDOM.nextInt(MANY)));
    }

    /** Reads what somebody typed; spaces between the digits do no harm. */
    public static Optional<SignInCode> read(String typed) {
        return Optional.of(BETWEEN.matcher(typed).replaceAll(""))
                .filter(digits -> SIX.matcher(digits).matches())
                .map(SignInCode::new);
    }

    /** SHA-256 of the address and the digits, as 64 hexadecimal digits. */
    String hash(EmailAddress email) {
        String both = email.value() + ":" + digits;
        return Sha256.of(both.getBytes(StandardCharsets.UTF_8)).hex();
    }

    @Override
    public String toString() {
        return "SignInCode[hidden]";
    }
}

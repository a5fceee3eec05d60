package groundbass.catalog.educator;

import com.eatthepath.otp.TimeBasedOneTimePasswordGenerator;
import java.security.InvalidKeyException;
import java.time.Instant;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import javax.crypto.spec.SecretKeySpec;

/** Codes of six digits that change every half minute (RFC 6238 with SHA-1, which every app knows). */
final class StepCode {
    /** Before and after the present step, for clocks that are not quite right (RFC 6238 section 5.2). */
    private static final int STEPS_OFF = 1;

    private static final TimeBasedOneTimePasswordGenerator CODES = new TimeBasedOneTimePasswordGenerator();

    private StepCode() {}

    /** The step whose code this is, near to a moment. */
    static OptionalLong step(FactorSecret secret, String typed, Instant now) {
        long present = now.toEpochMilli() / CODES.getTimeStep().toMillis();
        return LongStream.rangeClosed(present - STEPS_OFF, present + STEPS_OFF)
                .filter(step -> of(secret, step).equals(typed))
                .findFirst();
    }

    static String of(FactorSecret secret, long step) {
        try {
            var key = new SecretKeySpec(secret.bytes(), CODES.getAlgorithm());
            return CODES.generateOneTimePasswordString(
                    key, Instant.ofEpochMilli(step * CODES.getTimeStep().toMillis()));
        } catch (InvalidKeyException e) {
            throw new IllegalStateException("a secret of 160 bits is a key", e);
        }
    }
}

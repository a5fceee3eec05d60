package groundbass.catalog.educator;

import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.store.Unguessable;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The second factor of those who have set one up: a code of an app, or one of ten codes on paper for the day on which the
 * phone is gone. No code is taken twice.
 */
public final class SecondFactors {
    private static final int RECOVERY_CODES = 10;

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;
    private final FactorDemand demand;

    public SecondFactors(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
        this.demand = new FactorDemand(jdbi, audit);
    }

    /** Whether the site demands one of everybody. */
    public FactorDemand demand() {
        return demand;
    }

    public boolean isOn(EducatorId educator) {
        return jdbi.withHandle(handle -> secret(handle, educator).isPresent());
    }

    /**
     * Turns it on for somebody whose app has shown a code, in the place of one that was on.
     *
     * @return the codes for paper, which cannot be read again
     */
    public Outcome<List<String>> turnOn(EducatorId educator, FactorSecret secret, String typed) {
        var step = StepCode.step(secret, digits(typed), clock.instant());
        if (step.isEmpty()) {
            return Outcome.refused("code", "catalog.problem.factor");
        }
        var codes = Stream.generate(Unguessable::toType).limit(RECOVERY_CODES).toList();
        jdbi.useTransaction(handle -> {
            delete(handle, educator);
            handle.createUpdate("""
                            insert into second_factor (educator_id, secret, last_step, created_at)
                            values (:educator, :secret, :step, :now)""")
                    .bind("educator", educator)
                    .bind("secret", secret.base32())
                    .bind("step", step.getAsLong())
                    .bind("now", clock.instant())
                    .execute();
            codes.forEach(code -> handle.createUpdate(
                            "insert into recovery_code (educator_id, code_hash) values (:educator, :hash)")
                    .bind("educator", educator)
                    .bind("hash", digest(code))
                    .execute());
            audit.append(handle, educator, AuditWord.FACTOR_ON, educator.value());
        });
        return Outcome.done(codes);
    }

    /** Turns it off, if it was on. @param who does that */
    public boolean turnOff(EducatorId educator, String who) {
        return jdbi.inTransaction(handle -> {
            boolean wasOn = delete(handle, educator);
            if (wasOn) {
                audit.append(handle, who, AuditWord.FACTOR_OFF, educator.value());
            }
            return wasOn;
        });
    }

    /** @return whether it was on */
    static boolean delete(Handle handle, EducatorId educator) {
        handle.createUpdate("delete from recovery_code where educator_id = :educator")
                .bind("educator", educator)
                .execute();
        return handle.createUpdate("delete from second_factor where educator_id = :educator")
                        .bind("educator", educator)
                        .execute()
                > 0;
    }

    /** How many codes on paper are left. */
    public int recoveryCodes(EducatorId educator) {
        return jdbi.withHandle(
                handle -> handle.createQuery("select count(*) from recovery_code where educator_id = :educator")
                        .bind("educator", educator)
                        .mapTo(Integer.class)
                        .one());
    }

    /** Whether somebody may come in: they have no second factor, or have typed a code of it, which is used up then. */
    public boolean lets(EducatorId educator, String typed) {
        return jdbi.inTransaction(handle -> secret(handle, educator)
                .map(secret -> takeStep(handle, educator, secret, typed) || takeRecovery(handle, educator, typed))
                .orElse(true));
    }

    private static Optional<FactorSecret> secret(Handle handle, EducatorId educator) {
        return handle.createQuery("select secret from second_factor where educator_id = :educator")
                .bind("educator", educator)
                .mapTo(String.class)
                .findOne()
                .map(FactorSecret::new);
    }

    private boolean takeStep(Handle handle, EducatorId educator, FactorSecret secret, String typed) {
        var step = StepCode.step(secret, digits(typed), clock.instant());
        return step.isPresent()
                && handle.createUpdate("update second_factor set last_step = :step"
                                        + " where educator_id = :educator and last_step < :step")
                                .bind("educator", educator)
                                .bind("step", step.getAsLong())
                                .execute()
                        == 1;
    }

    private static boolean takeRecovery(Handle handle, EducatorId educator, String typed) {
        return handle.createUpdate("delete from recovery_code where educator_id = :educator and code_hash = :hash")
                        .bind("educator", educator)
                        .bind("hash", digest(typed))
                        .execute()
                == 1;
    }

    private static String digits(String typed) {
        return typed.replaceAll("\\s", "");
    }

    /** A code on paper has 140 random bits, so that a fast digest is enough; those of earlier versions have 80. */
    private static Sha256 digest(String code) {
        return Sha256.of(digits(code).toLowerCase(Locale.ROOT).getBytes(StandardCharsets.UTF_8));
    }
}

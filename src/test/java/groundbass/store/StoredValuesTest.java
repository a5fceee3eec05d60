package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.identity.Sha256;
import groundbass.identity.Slug;
import groundbass.identity.TextValue;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** What is bound comes back the same, on both databases; expected values are what was bound. */
public class StoredValuesTest {
    private static final Sha256 DIGEST = Sha256.of(new byte[] {1, 2, 3});

    public enum Pulse implements TextValue {
        TWO("two in a bar"),
        FOUR("four in a bar");

        private final String value;

        Pulse(String value) {
            this.value = value;
        }

        @Override
        public String value() {
            return value;
        }
    }

    public record Kept(Sha256 digest, long length) {}

    public record Row(
            Slug slug,
            Pulse pulse,
            Locale locale,
            ZoneId zone,
            Instant madeAt,
            Optional<Instant> endedAt,
            Optional<Slug> other,
            @Nested Kept kept) {}

    private static final Row ROW = new Row(
            new Slug("night-tide"),
            Pulse.FOUR,
            Locale.forLanguageTag("de-AT"),
            ZoneId.of("Europe/Vienna"),
            Instant.parse("2026-10-25T00:30:00.123456Z"), // in the hour that Vienna has twice
            Optional.of(Instant.parse("1969-12-31T23:59:59.999999Z")),
            Optional.empty(),
            new Kept(DIGEST, 3));

    private static void makeTable(Handle handle) {
        handle.execute("""
                create table kept_row (slug varchar(60), pulse varchar(60), locale varchar(60), zone varchar(60),
                    made_at timestamp with time zone, ended_at timestamp with time zone, other varchar(60),
                    digest varchar(64), length bigint)""");
    }

    private static void insert(Handle handle, Row row) {
        handle.createUpdate("""
                        insert into kept_row values
                            (:slug, :pulse, :locale, :zone, :madeAt, :endedAt, :other, :digest, :length)""").bindMethods(row).bindMethods(row.kept()).execute();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRecordComesBackAsItWasBound(Database database) {
        try (database) {
            var read = database.jdbi().withHandle(handle -> {
                makeTable(handle);
                insert(handle, ROW);
                return handle.createQuery("select * from kept_row")
                        .mapTo(Row.class)
                        .one();
            });
            assertThat(read).isEqualTo(ROW);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneColumnIsReadAsAnyOfThem(Database database) {
        try (database) {
            database.jdbi().useHandle(handle -> {
                makeTable(handle);
                insert(handle, ROW);
                assertThat(handle.createQuery("select pulse from kept_row where pulse = :pulse")
                                .bind("pulse", Pulse.FOUR)
                                .mapTo(Pulse.class)
                                .list())
                        .containsExactly(Pulse.FOUR);
                assertThat(handle.createQuery("select made_at from kept_row where made_at = ?")
                                .bind(0, ROW.madeAt())
                                .mapTo(Instant.class)
                                .one())
                        .isEqualTo(ROW.madeAt());
                assertThat(handle.createQuery("select digest from kept_row where digest = ?")
                                .bind(0, DIGEST)
                                .mapTo(Sha256.class)
                                .one())
                        .isEqualTo(DIGEST);
            });
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aWordThatIsNoneOfTheConstantsIsAnError(Database database) {
        try (database) {
            database.jdbi().useHandle(handle -> {
                makeTable(handle);
                handle.execute("insert into kept_row (pulse, slug) values ('five in a bar', 'Not A Slug')");
                var pulse = handle.createQuery("select pulse from kept_row").mapTo(Pulse.class);
                assertThatThrownBy(pulse::one)
                        .isInstanceOf(IllegalArgumentException.class)
                        .hasMessageContaining("five in a bar");
                var slug = handle.createQuery("select slug from kept_row").mapTo(Slug.class);
                assertThatThrownBy(slug::one)
                        .isInstanceOf(IllegalArgumentException.class)
                        .hasRootCauseMessage("not a slug: Not A Slug");
            });
        }
    }

    /** On this rest the methods of repositories that take no handle. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsCalledWithinATransactionTakesPartInIt(Database database) {
        try (database) {
            var jdbi = database.jdbi();
            assertThatThrownBy(() -> jdbi.useTransaction(outer -> {
                        NamedValues.put(outer, "first", "1");
                        Optional<String> seen = jdbi.withHandle(inner -> NamedValues.find(inner, "first"));
                        assertThat(seen).contains("1");
                        jdbi.useTransaction(inner -> NamedValues.put(inner, "second", "2"));
                        throw new IllegalStateException("taken back");
                    }))
                    .hasMessage("taken back");
            Map<String, String> afterwards = jdbi.withHandle(NamedValues::all);
            assertThat(afterwards).doesNotContainKeys("first", "second");
            jdbi.useTransaction(outer -> jdbi.useTransaction(inner -> NamedValues.put(inner, "third", "3")));
            Map<String, String> kept = jdbi.withHandle(NamedValues::all);
            assertThat(kept).containsEntry("third", "3");
        }
    }
}

package groundbass.store.node;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.store.BothDatabases;
import groundbass.store.CannotOpen;
import groundbass.store.Database;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class NodesTest {
    private static final SetUp SET_UP = new SetUp("https://grooves.example", "mail.example");

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void serversOfOneSiteAreSetUpAlike(Database database) {
        try (database;
                var first = node(database, SET_UP);
                var second = node(database, SET_UP)) {
            first.enter();
            second.enter();
            for (var other : new SetUp[] {
                new SetUp("https://other.example", "mail.example"), new SetUp("https://grooves.example", "")
            }) {
                assertThatThrownBy(() -> node(database, other).enter())
                        .isInstanceOf(CannotOpen.class)
                        .hasMessageContainingAll(Place.ofThisProcess(), "give both the same (--");
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsGoneHoldsNobodyUpAndWhatWasOnlyAwayIsThereAgain(Database database) {
        try (database) {
            var killed = node(database, SET_UP);
            killed.enter();
            database.jdbi().useHandle(h -> h.execute("update node set seen_at = now() - interval '21' second"));
            var changed = node(database, new SetUp("https://other.example", ""));
            changed.enter();
            changed.beat();
            assertThat(up(database)).isOne();
            killed.beat();
            assertThat(up(database)).isEqualTo(2);
            killed.close();
            changed.close();
            assertThat(up(database)).isZero();
        }
    }

    private static Nodes node(Database database, SetUp setUp) {
        return new Nodes(database.jdbi(), setUp, "0.1.0");
    }

    private static int up(Database database) {
        return database.jdbi().withHandle(h -> h.createQuery("select count(*) from node")
                .mapTo(Integer.class)
                .one());
    }
}

package groundbass.web.student.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.effort.Busy;
import groundbass.store.SettableClock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SeriesPlacesTest {
    private final SettableClock clock = SettableClock.at("2026-01-19T20:00:00Z");
    private final SeriesPlaces places = new SeriesPlaces(clock);
    private final List<String> cut = new ArrayList<>();

    @Test
    void oneNetworkNeverHasAll() {
        for (int i = 0; i < SeriesPlaces.EACH; i++) {
            enter("one");
        }
        assertThatThrownBy(() -> enter("one")).isInstanceOf(Busy.class);
        enter("another").close();
        assertThat(cut).isEmpty();
    }

    @Test
    void whoStandsStillLosesTheirPlaceOnlyWhereSomebodyWaits() {
        for (int i = 0; i < SeriesPlaces.ALL; i++) {
            enter("reader-" + i);
        }
        assertThatThrownBy(() -> enter("late")).isInstanceOf(Busy.class);
        clock.advance(SeriesPlaces.STANDING);
        assertThat(cut).isEmpty();
        enter("late");
        assertThat(cut).hasSize(1);
    }

    @Test
    void whoMovesKeepsTheirPlace() {
        var moving = new ArrayList<SeriesPlaces.Place>();
        for (int i = 0; i < SeriesPlaces.ALL - 1; i++) {
            moving.add(enter("reader-" + i));
        }
        var standing = enter("standing");
        clock.advance(SeriesPlaces.STANDING);
        moving.forEach(place -> place.move(SeriesPlaces.STEP));
        standing.move(SeriesPlaces.STEP - 1);
        enter("late");
        assertThat(cut).containsExactly("standing");
        assertThatThrownBy(() -> enter("later still")).isInstanceOf(Busy.class);
        standing.close(); // it has none any more
        assertThatThrownBy(() -> enter("later still")).isInstanceOf(Busy.class);
        moving.get(0).close();
        enter("later still");
    }

    private SeriesPlaces.Place enter(String network) {
        return places.enter(network, () -> cut.add(network));
    }
}

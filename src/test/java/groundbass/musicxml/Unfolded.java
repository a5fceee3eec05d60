package groundbass.musicxml;

import groundbass.musicxml.ReadScore.Bar;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.audiveris.proxymusic.BackwardForward;
import org.audiveris.proxymusic.Barline;
import org.audiveris.proxymusic.Direction;
import org.audiveris.proxymusic.Ending;
import org.audiveris.proxymusic.Repeat;
import org.audiveris.proxymusic.Sound;
import org.audiveris.proxymusic.StartStopDiscontinue;

/**
 * The order in which a document's bars are played, by its repeats, endings and jumps alone (MusicXML 4.0: repeat,
 * ending, sound); after a jump no repeat is taken, and of endings the last.
 */
final class Unfolded {
    private static final int MOST = 100_000;

    private final List<Bar> bars;
    private final List<Integer> played = new ArrayList<>();
    private int at;
    private int start;
    private int pass = 1;
    private boolean jumped;

    private Unfolded(List<Bar> bars) {
        this.bars = bars;
    }

    /** Indices of bars. */
    static List<Integer> of(List<Bar> bars) {
        var unfolded = new Unfolded(bars);
        while (unfolded.at < bars.size()) {
            unfolded.step();
            if (unfolded.played.size() > MOST) {
                throw new AssertionError("it goes on for ever");
            }
        }
        return unfolded.played;
    }

    private void step() {
        if (repeat(at, BackwardForward.FORWARD).isPresent() && at != start) {
            start = at;
            pass = 1;
        }
        var ending = ending(at, StartStopDiscontinue.START);
        if (ending.isPresent() && !isMeant(ending.get())) {
            at = endOfEnding(at) + 1;
            return;
        }
        played.add(at);
        leave();
    }

    private void leave() {
        if (jumped && says(at, sound -> sound.getFine() != null)) {
            at = bars.size();
        } else if (jumped && says(at, sound -> sound.getTocoda() != null)) {
            at = find(sound -> sound.getCoda() != null);
            begin(at);
            jumped = false;
        } else if (!goesBack() && !jumps()) {
            if (ending(at, StartStopDiscontinue.DISCONTINUE).isPresent()
                    || repeat(at, BackwardForward.BACKWARD).isPresent()) {
                begin(at + 1);
            }
            at++;
        }
    }

    private boolean goesBack() {
        var repeat = repeat(at, BackwardForward.BACKWARD);
        if (repeat.isEmpty() || jumped) {
            return false;
        }
        boolean inEnding = ending(at, StartStopDiscontinue.STOP).isPresent();
        int times = repeat.map(Repeat::getTimes).map(Number::intValue).orElse(2);
        if (inEnding || pass < times) {
            pass++;
            at = start;
            return true;
        }
        return false;
    }

    private boolean jumps() {
        if (jumped) {
            return false;
        }
        var jump = sounds(at)
                .filter(sound -> sound.getDacapo() != null || sound.getDalsegno() != null)
                .filter(sound -> sound.getTimeOnly() == null || Integer.parseInt(sound.getTimeOnly()) == pass)
                .findFirst();
        jump.ifPresent(sound -> {
            at = sound.getDacapo() != null ? 0 : find(each -> each.getSegno() != null);
            begin(at);
            jumped = true;
        });
        return jump.isPresent();
    }

    private void begin(int bar) {
        start = bar;
        pass = 1;
    }

    /** After a jump the last of the endings is, the one that no repeat follows. */
    private boolean isMeant(Ending ending) {
        if (jumped) {
            return ending(endOfEnding(at), StartStopDiscontinue.DISCONTINUE).isPresent();
        }
        return Arrays.stream(ending.getNumber().split(", ?"))
                .map(Integer::parseInt)
                .anyMatch(number -> number == pass);
    }

    private int endOfEnding(int from) {
        return IntStream.range(from, bars.size())
                .filter(bar -> ending(bar, StartStopDiscontinue.STOP).isPresent()
                        || ending(bar, StartStopDiscontinue.DISCONTINUE).isPresent())
                .findFirst()
                .orElseThrow();
    }

    private Optional<Repeat> repeat(int bar, BackwardForward direction) {
        return barlines(bar, Barline::getRepeat)
                .filter(repeat -> repeat.getDirection() == direction)
                .findFirst();
    }

    private Optional<Ending> ending(int bar, StartStopDiscontinue type) {
        return barlines(bar, Barline::getEnding)
                .filter(ending -> ending.getType() == type)
                .findFirst();
    }

    private <T> Stream<T> barlines(int bar, Function<Barline, T> part) {
        return bars.get(bar).measure().getNoteOrBackupOrForward().stream()
                .filter(Barline.class::isInstance)
                .map(Barline.class::cast)
                .map(part)
                .filter(Objects::nonNull);
    }

    private boolean says(int bar, Predicate<Sound> what) {
        return sounds(bar).anyMatch(what);
    }

    private int find(Predicate<Sound> what) {
        return IntStream.range(0, bars.size())
                .filter(bar -> says(bar, what))
                .findFirst()
                .orElseThrow();
    }

    private Stream<Sound> sounds(int bar) {
        return bars.get(bar).measure().getNoteOrBackupOrForward().stream()
                .filter(Direction.class::isInstance)
                .map(direction -> ((Direction) direction).getSound())
                .filter(Objects::nonNull);
    }
}

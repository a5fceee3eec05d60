package groundbass.score;

import groundbass.score.Passes.Fault;
import groundbass.score.Passes.Fault.Kind;
import groundbass.score.Passes.Played;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import groundbass.score.Roadmap.Until;
import groundbass.score.Stretches.Stretch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** The way through a line with its repeats and its one jump (rule: jumps-unfold). */
final class Route {
    private final List<Bar> bars;
    private final List<Stretch> stretches;
    private final List<Fault> faults = new ArrayList<>();

    /** @param bars whose repeats agree */
    Route(List<Bar> bars) {
        this.bars = bars;
        this.stretches = new Stretches(bars).all();
    }

    List<Played> played() {
        var straight = straight();
        var found = first(map -> map.jump().isPresent());
        if (found.isEmpty()) {
            return straight;
        }
        int at = found.getAsInt();
        var jump = map(at).jump().orElseThrow();
        var played = new ArrayList<Played>(
                straight.stream().filter(bar -> bar.bar() <= at).toList());
        played.addAll(once(from(jump), until(jump)));
        if (jump.until() == Until.CODA) {
            int coda = first(Roadmap::coda).orElseThrow();
            straight.stream().filter(bar -> bar.bar() >= coda).forEach(played::add);
        }
        return List.copyOf(played);
    }

    /** With repeats, and as if there were no jump. */
    private List<Played> straight() {
        var played = new ArrayList<Played>();
        for (var stretch : stretches) {
            for (int pass = 1; pass <= stretch.passes(); pass++) {
                int thisPass = pass;
                IntStream.rangeClosed(stretch.first(), stretch.last())
                        .filter(bar -> stretch.isPlayed(bar, thisPass))
                        .forEach(bar -> played.add(new Played(bar, thisPass)));
            }
        }
        return List.copyOf(played);
    }

    /** From one bar to another as on the last pass. */
    private List<Played> once(int first, int last) {
        return IntStream.rangeClosed(first, last)
                .filter(this::isOnLastPass)
                .mapToObj(bar -> new Played(bar, stretch(bar).passes() + 1))
                .toList();
    }

    private int from(Jump jump) {
        return jump.from() == From.CAPO ? 0 : first(Roadmap::segno).orElseThrow();
    }

    private int until(Jump jump) {
        return switch (jump.until()) {
            case END -> bars.size() - 1;
            case FINE -> first(Roadmap::fine).orElseThrow();
            case CODA -> first(Roadmap::toCoda).orElseThrow();
        };
    }

    List<Fault> faults() {
        List.<Predicate<Roadmap>>of(Roadmap::segno, Roadmap::coda, Roadmap::toCoda, Roadmap::fine, map -> map.jump()
                        .isPresent())
                .forEach(this::once);
        first(map -> map.jump().isPresent()).ifPresentOrElse(this::check, () -> unasked(Roadmap.NONE));
        return faults;
    }

    private void once(Predicate<Roadmap> sign) {
        IntStream.range(0, bars.size())
                .filter(bar -> sign.test(map(bar)))
                .skip(1)
                .forEach(bar -> faults.add(new Fault(bar, Kind.JUMP_SIGN_TWICE)));
    }

    private void check(int at) {
        var jump = map(at).jump().orElseThrow();
        inside(at, at == stretch(at).last());
        int from = 0;
        if (jump.from() == From.SEGNO) {
            var segno = first(Roadmap::segno);
            faultUnless(at, Kind.NO_SEGNO, segno.isPresent() && segno.getAsInt() <= at);
            from = segno.orElse(0);
        }
        switch (jump.until()) {
            case END -> {}
            case FINE -> {
                between(at, from, first(Roadmap::fine), Kind.NO_FINE);
                faultUnless(at, Kind.NEVER_PLAYED, at + 1 == bars.size());
            }
            case CODA -> {
                between(at, from, first(Roadmap::toCoda), Kind.NO_CODA);
                boolean follows = at + 1 < bars.size() && map(at + 1).coda();
                faultUnless(at, Kind.NO_CODA, follows);
            }
        }
        unasked(asked(jump));
    }

    /** The signs that a jump asks for. */
    private static Roadmap asked(Jump jump) {
        boolean coda = jump.until() == Until.CODA;
        return new Roadmap(jump.from() == From.SEGNO, coda, coda, jump.until() == Until.FINE, Optional.of(jump));
    }

    private void unasked(Roadmap asked) {
        for (int bar = 0; bar < bars.size(); bar++) {
            var map = map(bar);
            boolean more = (map.segno() && !asked.segno())
                    || (map.coda() && !asked.coda())
                    || (map.toCoda() && !asked.toCoda())
                    || (map.fine() && !asked.fine());
            faultUnless(bar, Kind.NO_JUMP, !more);
        }
    }

    /** Where a jump's way leaves: after where the jump leads, before the jump, and in what is then played. */
    private void between(int jump, int from, OptionalInt leaves, Kind otherwise) {
        boolean between = leaves.isPresent() && leaves.getAsInt() >= from && leaves.getAsInt() < jump;
        faultUnless(jump, otherwise, between);
        leaves.ifPresent(bar -> faultUnless(bar, Kind.JUMP_INSIDE_REPEAT, isOnLastPass(bar)));
    }

    private void inside(int jump, boolean atEnd) {
        faultUnless(jump, Kind.JUMP_INSIDE_REPEAT, atEnd || stretch(jump).passes() == 1);
    }

    private void faultUnless(int bar, Kind kind, boolean right) {
        var fault = new Fault(bar, kind);
        if (!right && !faults.contains(fault)) {
            faults.add(fault);
        }
    }

    private boolean isOnLastPass(int bar) {
        var stretch = stretch(bar);
        return stretch.isPlayed(bar, stretch.passes());
    }

    private Stretch stretch(int bar) {
        return stretches.stream()
                .filter(stretch -> bar >= stretch.first() && bar <= stretch.last())
                .findFirst()
                .orElseThrow();
    }

    private OptionalInt first(Predicate<Roadmap> sign) {
        return IntStream.range(0, bars.size())
                .filter(bar -> sign.test(map(bar)))
                .findFirst();
    }

    private Roadmap map(int bar) {
        return bars.get(bar).repeats().roadmap();
    }
}

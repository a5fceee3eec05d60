package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sign.curve.Curves.Bow;
import groundbass.engraving.sketch.Layer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Curves that keep clear of what stands under them: ties and slurs cross no note (rule: curve-shape). */
final class Arches {
    private static final Set<Kind> IN_THE_WAY = EnumSet.of(
            Kind.HEAD,
            Kind.PARENTHESIS,
            Kind.ACCIDENTAL,
            Kind.DOT,
            Kind.REST,
            Kind.ARTICULATION,
            Kind.BEAM,
            Kind.FLAG,
            Kind.STEM,
            Kind.FRET,
            Kind.TUPLET);

    /** What no curve may cross, not even to stay close to its heads. */
    private static final Set<Kind> NEVER_CROSSED = EnumSet.of(
            Kind.HEAD,
            Kind.PARENTHESIS,
            Kind.ACCIDENTAL,
            Kind.DOT,
            Kind.REST,
            Kind.ARTICULATION,
            Kind.FRET,
            Kind.TUPLET);

    private static final double CLEAR = 0.15;
    private static final double BESIDE = 0.3;

    /** How close a tie comes to the heads that it joins. */
    private static final double NEAREST = 0.13;

    private static final double STEP = 0.5;
    private static final double LITTLE = 1.5;
    private static final double HIGHEST_LIFT = 9;
    private static final double ENDS_LIFT = 6;

    /** How far the ends of a gentle slur leave their heads, and how high it is for its length. */
    private static final double GENTLE_ENDS = 1;

    private static final double ROUNDEST = 0.3;

    /** Where along its length a curve bends: first as curves do, then steeply from its ends. */
    private static final double[] SHARES = {0.28, 0.12, 0.03};

    /** Of any number of obstacles: the curve that crosses the fewest. */
    private static final int AS_FEW_AS_CAN_BE = Integer.MAX_VALUE;

    /** A curve that crosses anything at all is of no use. */
    private static final int NONE = 1;

    /** Over the numbers of a tablature, whose stems stand apart from them. */
    private static final Set<Kind> AMONG_NUMBERS =
            EnumSet.of(Kind.FRET, Kind.REST, Kind.DOT, Kind.ARTICULATION, Kind.TUPLET);

    private final Point from;
    private final Point to;
    private final boolean above;
    private final List<Box> all = new ArrayList<>();

    /** Those that are never crossed. */
    private final List<Box> hard = new ArrayList<>();

    private Arches(Layer layer, Point from, Point to, boolean above) {
        this.from = from;
        this.to = to;
        this.above = above;
        var inTheWay = layer.isTab() ? AMONG_NUMBERS : IN_THE_WAY;
        for (var mark : layer.marks()) {
            if (inTheWay.contains(mark.kind())) {
                admit(mark);
            }
        }
    }

    private void admit(Mark mark) {
        var box = mark.box();
        if (box.right() > from.x() - BESIDE && box.left() < to.x() + BESIDE) {
            for (var piece : mark.shape().pieces()) {
                if (!isBeside(piece)) {
                    var obstacle = piece.grown(CLEAR);
                    all.add(obstacle);
                    if (NEVER_CROSSED.contains(mark.kind())) {
                        hard.add(obstacle);
                    }
                }
            }
        }
    }

    /** Whether it is a head that a tie begins behind or ends before. */
    private boolean isBeside(Box piece) {
        var around = piece.grown(CLEAR);
        return piece.right() <= from.x() - NEAREST && around.contains(Box.around(from, 0))
                || piece.left() >= to.x() + NEAREST && around.contains(Box.around(to, 0));
    }

    /** From point to point, arched as far as it must be; where that does not help, its ends move outward as well. */
    static Shape.Curve over(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        return arches.searched(arches.all, Curves::slur, AS_FEW_AS_CAN_BE).best;
    }

    /**
     * Close to its ends, which stay where they are: clear of everything, else through a stem, a flag or a beam, which
     * harms less than a curve that leaves its heads (rule: curve-at-its-heads). Over or under a sign its ends leave their
     * heads a little, which is better than a half circle (rule: slur-leans).
     */
    static Optional<Shape.Curve> near(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        double gentle = Math.min(LITTLE, Curves.liftUntil(ROUNDEST, to.x() - from.x()));
        return arches.clear(arches.all, Curves::slur, 0, gentle)
                .or(() -> arches.clear(arches.hard, Curves::slur, GENTLE_ENDS, gentle))
                .or(() -> arches.clear(arches.all, Curves::slur, 0, LITTLE))
                .or(() -> arches.clear(arches.hard, Curves::slur, 0, LITTLE));
    }

    /** As {@link #near}, and flat. */
    static Optional<Shape.Curve> tie(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        return arches.clear(arches.all, Curves::tie, 0, LITTLE)
                .or(() -> arches.clear(arches.hard, Curves::tie, 0, LITTLE));
    }

    /** As {@link #overHeads}, if that crosses nothing else. */
    static Optional<Shape.Curve> clearOfHeads(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        return arches.searched(arches.hard, Curves::slur, NONE).found();
    }

    /**
     * Under signs that hang lower than the heads that it joins: through what {@link #near} may pass, a little below its
     * ends where that is needed.
     */
    static Optional<Shape.Curve> under(Layer layer, Point from, Point to) {
        var arches = new Arches(layer, from, to, false);
        return arches.clear(arches.hard, Curves::slur, LITTLE, LITTLE);
    }

    /** As {@link #overHeads}, and flat where it can be. */
    static Shape.Curve tieOverHeads(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        return arches.searched(arches.hard, Curves::tie, AS_FEW_AS_CAN_BE).best;
    }

    /** As {@link #over}, but through stems, flags and beams. */
    static Shape.Curve overHeads(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        return arches.searched(arches.hard, Curves::slur, AS_FEW_AS_CAN_BE).best;
    }

    /** The curve at its usual height or a little higher, if that is clear. */
    static Optional<Shape.Curve> plain(Layer layer, Point from, Point to, boolean above) {
        var arches = new Arches(layer, from, to, above);
        return arches.clear(arches.all, Curves::slur, 0, LITTLE);
    }

    /** @param mostEnds how far its ends may move outward */
    private Optional<Shape.Curve> clear(List<Box> obstacles, Bow bow, double mostEnds, double mostLift) {
        var search = new Search(obstacles, bow, NONE);
        for (double ends = 0; ends <= mostEnds && !search.isClear(); ends += STEP / 2) {
            search.lift(ends, SHARES[0], mostLift);
        }
        return search.found();
    }

    private Search searched(List<Box> obstacles, Bow bow, int fewest) {
        var search = new Search(obstacles, bow, fewest);
        for (double ends = 0; ends <= ENDS_LIFT && !search.isClear(); ends += STEP) {
            for (double share : SHARES) {
                search.lift(ends, share, HIGHEST_LIFT);
            }
        }
        return search;
    }

    /** The best curve so far among these obstacles. */
    private final class Search {
        private final List<Box> obstacles;
        private final Bow bow;
        private Shape.Curve best;

        /** Only a curve that crosses fewer is better than the best so far. */
        private int fewest;

        Search(List<Box> obstacles, Bow bow, int fewest) {
            this.obstacles = obstacles;
            this.bow = bow;
            this.fewest = fewest;
            this.best = bow.between(from, to, above, SHARES[0]);
        }

        boolean isClear() {
            return fewest == 0;
        }

        Optional<Shape.Curve> found() {
            return isClear() ? Optional.of(best) : Optional.empty();
        }

        void lift(double ends, double share, double most) {
            double sign = above ? -1 : 1;
            var plain = bow.between(from.moved(0, sign * ends), to.moved(0, sign * ends), above, share);
            var cuts = plain.cuts();
            for (double lift = 0; lift <= most && !isClear(); lift += lift < 3 ? STEP : 2 * STEP) {
                var curve = plain.lifted(sign * lift);
                int crossed = crossed(curve, cuts);
                if (crossed < fewest) {
                    best = curve;
                    fewest = crossed;
                }
            }
        }

        /**
         * How many obstacles a curve crosses; it is enough to know that they are no fewer than the fewest so far. What it
         * crosses comes first for the next one, which most likely crosses that, too.
         */
        private int crossed(Shape.Curve curve, double[] cuts) {
            var hull = hull(curve);
            int crossed = 0;
            for (int i = 0; i < obstacles.size() && crossed < fewest; i++) {
                var obstacle = obstacles.get(i);
                if (hull.overlaps(obstacle) && curve.overlaps(obstacle, cuts)) {
                    Collections.swap(obstacles, crossed, i);
                    crossed++;
                }
            }
            return crossed;
        }
    }

    /** A cubic lies between its ends and control points. */
    private static Box hull(Shape.Curve curve) {
        return new Box(
                        Math.min(curve.from().x(), curve.first().x()),
                        Math.min(
                                Math.min(curve.from().y(), curve.to().y()),
                                Math.min(curve.first().y(), curve.second().y())),
                        Math.max(curve.to().x(), curve.second().x()),
                        Math.max(
                                Math.max(curve.from().y(), curve.to().y()),
                                Math.max(curve.first().y(), curve.second().y())))
                .grown(curve.middle());
    }
}

package groundbass.score;

import java.util.Optional;

/** How written pairs are played, and whether the pulse is felt at half the speed. The score itself stays straight. */
public record Feel(Optional<Swing> swing, boolean halfTime) {
    public static final Feel STRAIGHT = new Feel(Optional.empty(), false);

    public static Feel swung(Swing swing) {
        return new Feel(Optional.of(swing), false);
    }

    /** As line text has it: {@code straight}, {@code swing 8ths 2:1}, {@code swing 16ths 3:2 half-time}. */
    @Override
    public String toString() {
        return swing.map(Swing::toString).orElse("straight") + (halfTime ? " half-time" : "");
    }
}

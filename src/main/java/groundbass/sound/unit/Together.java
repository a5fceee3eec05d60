package groundbass.sound.unit;

import java.util.List;

/** Units that sound at once. */
public record Together(List<Unit> units) implements Unit {
    public Together {
        units = List.copyOf(units);
    }

    @Override
    public void render(float[] out, int from, int count) {
        units.forEach(unit -> unit.render(out, from, count));
    }
}

package groundbass.sound.unit;

import java.util.List;

/** Units that sound at once. */
public record UnitSum(List<Unit> units) implements Unit {
    public UnitSum {
        units = List.copyOf(units);
    }

    @Override
    public void render(float[] out, int from, int count) {
        units.forEach(unit -> unit.render(out, from, count));
    }
}

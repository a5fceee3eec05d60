package groundbass.sound.drum;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.groove.Click;
import groundbass.groove.Click.Weight;
import groundbass.score.Fraction;
import groundbass.signal.SampleRate;
import groundbass.sound.Measure;
import java.util.List;
import org.junit.jupiter.api.Test;

class ClickPartTest {
    private static final int RATE = 44_100;

    /** rule: click-accent: 4 to 6 dB. */
    @Test
    void theFirstBeatStandsOut() {
        var clicks = List.of(
                new Click(Fraction.ZERO, 0, Weight.BAR, false), new Click(Fraction.of(1, 4), 0.5, Weight.BEAT, false));
        float[] played = new float[RATE];
        ClickPart.of(new SampleRate(RATE), clicks).render(played, 0, RATE);
        double first = Measure.decibels(played, 0, RATE / 20);
        double second = Measure.decibels(played, RATE / 2, RATE / 20);
        assertThat(first - second).isBetween(4.0, 6.0);
        assertThat(Measure.decibels(played, RATE / 4, RATE / 20))
                .as("between them")
                .isLessThan(second - 60);
    }
}

package groundbass.intake.xml;

import groundbass.intake.draft.PlayedTempo;
import groundbass.intake.notice.NoticeList;
import groundbass.score.Changes.Fresh;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Meter;
import groundbass.score.Tempo;
import groundbass.text.Message;
import groundbass.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What holds where the reading of a part is, and the bars so far. What holds from the first bar on is the header's. Mutable. */
final class PartState {
    private final NoticeList notices;
    private final List<RawMeasure> bars = new ArrayList<>();
    private Header header = Header.PLAIN;
    private Optional<RawMeasure> now = Optional.empty();
    private boolean ours;

    /** What the signature says; empty in music without a metre. */
    private Optional<Meter> signature = Optional.of(Meter.COMMON);

    private boolean meterSaid;
    private Optional<Key> key = Optional.empty();
    private boolean modeSaid;
    private Meter meter = Meter.COMMON;
    private Key keyInForce = Header.PLAIN.key();
    private Optional<Tempo> tempo = Optional.empty();
    private Optional<Tempo> later = Optional.empty();

    PartState(NoticeList notices) {
        this.notices = notices;
    }

    List<RawMeasure> bars() {
        return bars;
    }

    RawMeasure bar() {
        return now.orElseThrow();
    }

    /** Those before the one that is being read. */
    List<RawMeasure> before() {
        return bars;
    }

    Header header() {
        return header;
    }

    /** Whether this program wrote the file. */
    boolean isOurs() {
        return ours;
    }

    void writtenBy(String software) {
        ours |= software.equals("Groundbass");
    }

    void with(Header newHeader) {
        header = newHeader;
    }

    boolean isModeSaid() {
        return modeSaid;
    }

    boolean isTempoSaid() {
        return tempo.isPresent();
    }

    boolean isMeterSaid() {
        return meterSaid;
    }

    Optional<Meter> signature() {
        return signature;
    }

    void begin(String number, boolean implicit) {
        var start = bars.isEmpty() ? Fraction.ZERO : bars.get(bars.size() - 1).end();
        now = Optional.of(new RawMeasure(bars.size(), number, implicit, start));
        later.ifPresent(each -> change(each));
        later = Optional.empty();
    }

    /** @param effective the metre that the bar really has */
    void end(Meter effective) {
        var bar = bar();
        if (bars.isEmpty()) {
            header = header.with(effective);
        } else if (!effective.equals(meter)) {
            bar.changes = bar.changes.with(effective);
        }
        meter = effective;
        endKey(bar);
        bars.add(bar);
        now = Optional.empty();
    }

    private void endKey(RawMeasure bar) {
        var next = key.orElse(keyInForce);
        if (bars.isEmpty()) {
            header = header.with(next);
        } else if (!next.equals(keyInForce)) {
            bar.changes = bar.changes.with(next);
        }
        keyInForce = next;
    }

    void meter(Optional<Meter> newSignature) {
        signature = newSignature;
        meterSaid = true;
    }

    /** @param withMode whether the file says which of the keys of that signature it is */
    void key(Key newKey, boolean withMode) {
        key = Optional.of(newKey);
        modeSaid |= withMode;
    }

    void tempo(Tempo newTempo, Fraction at) {
        if (at.isPositive()) {
            notices.changed(bar().index, Message.of("intake.changed.tempo"));
            later = Optional.of(newTempo);
        } else {
            change(newTempo);
        }
    }

    private void change(Tempo newTempo) {
        tempo = Optional.of(newTempo);
        if (bars.isEmpty()) {
            header = header.with(newTempo);
        } else {
            bar().changes = bar().changes.with(newTempo);
        }
    }

    /** Quarters a minute; what was said already in a figure is not said again. */
    void playing(Fraction quarters, Fraction at) {
        boolean same = tempoNow().filter(quarters::equals).isPresent();
        if (!same) {
            PlayedTempo.of(quarters, signature.orElse(Meter.COMMON).pulse())
                    .ifPresentOrElse(
                            found -> tempo(found, at),
                            () -> notices.leftOut(bar().index, Message.of("intake.left.tempo")));
        }
    }

    private Optional<Fraction> tempoNow() {
        return later.or(() -> tempo).map(Tempo::quartersPerMinute);
    }

    /** A tempo that has fallen stays where it fell to. */
    void slowed() {
        bar().changes
                .slowingTo()
                .ifPresent(to -> tempo = Optional.of(new Tempo(
                        to, tempo.map(Tempo::beat).orElse(header.tempo().beat()))));
    }

    void feel(Feel feel) {
        if (bars.isEmpty()) {
            header = header.with(feel);
        } else {
            bar().changes = bar().changes.with(feel);
        }
    }

    void fresh(Fresh place) {
        bar().changes = bar().changes.with(place);
    }

    /** The bar that ends at a time of the one that is being read. */
    RawMeasure endingAt(Fraction at) {
        return at.isZero() && !bars.isEmpty() ? bars.get(bars.size() - 1) : bar();
    }
}

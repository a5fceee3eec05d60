package groundbass.intake.xml;

import groundbass.intake.notice.NoticeList;
import groundbass.intake.xml.document.Cursor;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.text.Message;
import java.util.Optional;

/** Key and time signatures of a part, which in a line hold for whole bars. Mutable: remembers the key as it is written. */
final class KeyAndMeter {
    private final PartState state;
    private final Cursor cursor;
    private final Transposing transposing;
    private final NoticeList notices;

    /** Another transposition lets it sound otherwise. */
    private Optional<XmlElement> writtenKey = Optional.empty();

    KeyAndMeter(PartState state, Cursor cursor, Transposing transposing, NoticeList notices) {
        this.state = state;
        this.cursor = cursor;
        this.transposing = transposing;
        this.notices = notices;
    }

    /** @param attributes whose transposition has been read */
    void read(XmlElement attributes) {
        var key = attributes.child("key");
        if (key.isPresent()) {
            writtenKey = key;
            key(key.get());
            middle("intake.middle.key");
        } else if (attributes.has("transpose")) {
            writtenKey.ifPresent(this::key);
        }
        attributes.child("time").ifPresent(this::time);
    }

    private void key(XmlElement key) {
        int staff = key.attribute("number").flatMap(XmlNumbers::whole).orElse(1);
        Keys.of(key)
                .flatMap(written -> transposing.key(staff, written))
                .ifPresentOrElse(
                        sounding -> state.key(sounding, Keys.mode(key).isPresent()),
                        () -> notices.leftOut(state.bar().index, Message.of("intake.left.key")));
    }

    private void time(XmlElement time) {
        var meter = Meters.of(time);
        state.meter(meter);
        if (meter.isEmpty()) {
            notices.changed(state.bar().index, Message.of("intake.changed.meter"));
        }
        middle("intake.middle.meter");
    }

    private void middle(String signKey) {
        if (cursor.now().isPositive()) {
            notices.changed(state.bar().index, Message.of("intake.changed.middle", Message.of(signKey)));
        }
    }
}

package groundbass.script.reading;

import groundbass.score.Fraction;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Described;
import groundbass.script.claims.Said;
import groundbass.script.words.Sense;
import java.util.List;

/** Takes in what is told of notes beside their names and places: techniques, lengths, fingers, and rests. */
final class DetailsTold {
    private final Surroundings around;
    private final InHand hand;
    /** Whether lengths are those of a tuplet, which are not what they are called. */
    private final boolean tuplet;
    /** Whether several parts are told, where the one may rest while another sounds. */
    private final boolean voices;

    DetailsTold(Surroundings around, InHand hand) {
        this.around = around;
        this.hand = hand;
        this.tuplet = around.say(Sense.TUPLET);
        this.voices = around.say(Sense.VOICE);
    }

    /** Takes a chunk in that is one of these; any other is nothing to it. */
    void take(Chunk chunk, int i) {
        var said = around.at(i);
        if (chunk instanceof Chunk.Played played) {
            played(said, played, i);
        } else if (chunk instanceof Chunk.Lengths lengths && !tuplet) {
            lengths(said, lengths.each());
        } else if (chunk instanceof Chunk.Lasts lasts) {
            lasts(said, lasts, i);
        } else if (chunk instanceof Chunk.Finger finger) {
            boolean another = hand.has(note -> note.finger().isPresent());
            hand.open(said, another).change(note -> note.withFinger(finger.number()));
        } else if (chunk instanceof Chunk.Pair) {
            hand.open(said).change(Described::paired);
        } else if (chunk instanceof Chunk.Silence silence) {
            silence(said, silence, i);
        }
    }

    private void played(Said said, Chunk.Played played, int i) {
        boolean core = hand.has(Described::hasCore);
        boolean verb = core && around.leadsToNote(i);
        boolean noun = played.manner().isPitchless() && hand.has(DetailsTold::isKnown);
        boolean several = (played.count() > 1 && core) || isOfNextLength(i);
        boolean other = hand.has(note -> note.clashesWith(played.manner()));
        var group = hand.open(said, verb || noun || several || other);
        group.changeReached(note -> note.with(played.manner()));
        if (played.count() > 1) {
            group.change(note -> note.times(played.count()));
        }
    }

    private static boolean isKnown(Described note) {
        return note.isDead() || note.spot().fret().isPresent() || note.name().isPresent();
    }

    /** "A dead sixteenth" after a note that has its length already. */
    private boolean isOfNextLength(int i) {
        return around.isBeforeLengths(i) && hand.has(DetailsTold::hasLength);
    }

    private static boolean hasLength(Described note) {
        return note.length().isPresent();
    }

    private void lengths(Said said, List<Fraction> each) {
        boolean severalAlike = each.size() > 1 && each.stream().distinct().count() == 1;
        boolean room = hand.note()
                .filter(group -> group.size() == each.size() || group.size() == 1)
                .isPresent();
        if (severalAlike && room) {
            several(said, each);
            return;
        }
        var values = severalAlike ? each.subList(0, 1) : each;
        new Values<Fraction>(values, DetailsTold::hasLength, Described::with).giveTo(hand, said);
        if (severalAlike) {
            hand.note().orElseThrow().change(note -> note.times(each.size()));
        }
    }

    /** "Two sixteenths": which they are may be said afterwards. */
    private void several(Said said, List<Fraction> each) {
        boolean fits = hand.note()
                .filter(group -> group.size() == each.size() && !group.any(DetailsTold::hasLength))
                .isPresent();
        var group = hand.open(said, !fits && hand.has(Described::hasCore));
        group.change(note -> note.with(each.get(0)));
        if (group.size() == 1) {
            group.change(note -> note.times(each.size()));
        }
    }

    private void lasts(Said said, Chunk.Lasts lasts, int i) {
        boolean ofRest = around.follows(i, Chunk.Silence.class);
        if (!ofRest) {
            hand.open(said).change(note -> note.lasting(lasts.wholeBar() ? -1 : lasts.beats()));
        }
    }

    private void silence(Said said, Chunk.Silence silence, int i) {
        if (!hand.expectsLandmark() && !voices && !tuplet) {
            var quiet = new Segment.Quiet(silence.length(), around.isLater(i), said.from(), said.to());
            hand.segment().quiets().add(quiet);
            hand.breakOff();
        }
    }
}

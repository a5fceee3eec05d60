package groundbass.walkthrough.words;

import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Passes.Played;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import groundbass.score.Roadmap;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import groundbass.score.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** What is written around a bar: sections, changes, repeats and endings. */
public final class SignWords {
    private final Wording words;
    private final Line line;
    private final List<InForce> inForce;
    private final List<Played> played;

    public SignWords(Wording words, Line line) {
        this.words = words;
        this.line = line;
        this.inForce = line.inForce();
        this.played = line.played();
    }

    /** A sentence, and what it tells in a form that no wording changes. */
    public record Sign(String subject, String text) {
        public Told told(int index, Line line) {
            return new Told(Passage.bar(index + line.firstNumber()), subject, text);
        }
    }

    /** Sentences that come before the bar of this index. */
    public List<Sign> before(int index) {
        var bar = line.bars().get(index);
        var changes = bar.changes();
        var tempo = inForce.get(index).tempo();
        var signs = new ArrayList<Sign>();
        changes.section().ifPresent(name -> signs.add(sign("section", name, name)));
        changes.key().ifPresent(key -> signs.add(sign("key", key, words.key(key))));
        changes.meter().ifPresent(meter -> signs.add(sign("meter", meter, meter.toString())));
        changes.tempo()
                .ifPresent(next -> signs.add(
                        sign("tempo", next, words.tempo(next, inForce.get(index).meter()))));
        changes.feel().ifPresent(feel -> signs.add(new Sign(subject("feel", feel), OpeningWords.feel(words, feel))));
        changes.slowingTo()
                .map(perMinute -> new Tempo(perMinute, tempo.beat()))
                .ifPresent(slow -> signs.add(sign("slowing", slow, String.valueOf(slow.perMinute()))));
        if (bar.repeats().start()) {
            signs.add(new Sign(subject("repeat", ""), words.say("sign.repeat")));
        }
        if (bar.repeats().roadmap().segno()) {
            signs.add(new Sign(subject("segno", ""), words.say("sign.segno")));
        }
        if (bar.repeats().roadmap().coda()) {
            signs.add(new Sign(subject("coda", ""), words.say("sign.coda")));
        }
        bar.repeats().ending().ifPresent(ending -> signs.add(new Sign(subject("ending", ending), ending(ending))));
        return signs;
    }

    /** Sentences that come after the bar of this index: what sends the player back or away, or ends the line. */
    public List<Sign> after(int index) {
        var repeats = line.bars().get(index).repeats();
        var roadmap = repeats.roadmap();
        var signs = new ArrayList<Sign>();
        repeats.end().ifPresent(end -> signs.add(new Sign(subject("back", end), back(index, repeats.endingEnd()))));
        if (roadmap.toCoda()) {
            signs.add(new Sign(subject("to coda", ""), words.say("sign.to-coda", number(find(Roadmap::coda)))));
        }
        if (roadmap.fine()) {
            signs.add(new Sign(subject("fine", ""), words.say("sign.fine")));
        }
        roadmap.jump().ifPresent(jump -> signs.add(new Sign(subject("jump", jump.words()), jump(jump))));
        return signs;
    }

    private String jump(Jump jump) {
        String from = to(jump.from() == From.CAPO ? 0 : find(Roadmap::segno));
        return switch (jump.until()) {
            case END -> words.say("sign.jump.end", jump.printed(), from);
            case FINE -> words.say("sign.jump.fine", jump.printed(), from, number(find(Roadmap::fine)));
            case CODA ->
                words.say(
                        "sign.jump.coda",
                        jump.printed(),
                        from,
                        number(find(Roadmap::toCoda)),
                        number(find(Roadmap::coda)));
        };
    }

    private int find(Predicate<Roadmap> sign) {
        return IntStream.range(0, line.bars().size())
                .filter(bar -> sign.test(line.bars().get(bar).repeats().roadmap()))
                .findFirst()
                .orElseThrow();
    }

    private String number(int index) {
        return String.valueOf(index + line.firstNumber());
    }

    private Sign sign(String key, Object value, String shown) {
        return new Sign(subject(key, value), words.say("sign." + key, shown));
    }

    private static String subject(String key, Object value) {
        return "sign " + key + " " + value;
    }

    private String ending(Ending ending) {
        String first = String.valueOf(ending.firstPass());
        return ending.firstPass() == ending.lastPass()
                ? words.counted("sign.ending.only", ending.firstPass())
                : words.say("sign.endings", first, String.valueOf(ending.lastPass()));
    }

    private String back(int index, boolean isEnding) {
        String to = to(returnFrom(index));
        return isEnding
                ? words.say("sign.back", to)
                : words.say("sign.again", to, words.counted("times", passes(index)));
    }

    /** Every sign is obeyed at least once, and what is played after the first time is where it leads. */
    public int returnFrom(int index) {
        int first = played.stream().map(Played::bar).toList().indexOf(index);
        return played.get(first + 1).bar();
    }

    /** How often the bar of a repeat end is played before anything leads away from there. */
    private int passes(int index) {
        return line.bars().get(index).repeats().end().flatMap(RepeatEnd::times).orElse(2);
    }

    private String to(int index) {
        return line.bars().get(index).isPickup() ? words.say("to.pickup") : words.say("to.bar", number(index));
    }
}

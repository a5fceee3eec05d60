package groundbass.walkthrough;

import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Passes.Played;
import groundbass.score.Repeats.Ending;
import groundbass.score.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is written around a bar: sections, changes, repeats and endings. */
final class SignWords {
    private final Vocabulary words;
    private final Line line;
    private final List<InForce> inForce;
    private final List<Played> played;

    SignWords(Vocabulary words, Line line) {
        this.words = words;
        this.line = line;
        this.inForce = line.inForce();
        this.played = line.played();
    }

    /** Sentences that come before the bar of this index. */
    List<String> before(int index) {
        var bar = line.bars().get(index);
        var changes = bar.changes();
        var tempo = inForce.get(index).tempo();
        var texts = new ArrayList<String>();
        changes.section().ifPresent(name -> texts.add(words.say("sign.section", name)));
        changes.key().ifPresent(key -> texts.add(words.say("sign.key", words.key(key))));
        changes.meter().ifPresent(meter -> texts.add(words.say("sign.meter", meter.toString())));
        changes.tempo().ifPresent(next -> texts.add(words.say("sign.tempo", words.tempo(next))));
        changes.feel().ifPresent(feel -> texts.add(OpeningWords.feel(words, feel)));
        changes.slowingTo()
                .map(perMinute -> new Tempo(perMinute, tempo.beat()))
                .ifPresent(slow -> texts.add(words.say("sign.slowing", words.tempo(slow))));
        if (bar.repeats().start()) {
            texts.add(words.say("sign.repeat"));
        }
        bar.repeats().ending().ifPresent(ending -> texts.add(ending(ending)));
        return texts;
    }

    /** The sentence that comes after the bar of this index, if its sign sends the player back. */
    Optional<String> after(int index) {
        var signs = line.bars().get(index).repeats();
        return signs.end().map(end -> back(index, signs.endingEnd()));
    }

    private String ending(Ending ending) {
        String first = String.valueOf(ending.firstPass());
        return ending.firstPass() == ending.lastPass()
                ? words.say("sign.ending.only", first)
                : words.say("sign.endings", first, String.valueOf(ending.lastPass()));
    }

    private String back(int index, boolean isEnding) {
        String to = to(returnFrom(index));
        int passes = (int) played.stream().filter(each -> each.bar() == index).count();
        return isEnding ? words.say("sign.back", to) : words.say("sign.again", to, words.counted("times", passes));
    }

    /** Every sign is obeyed at least once, and what is played after the first time is where it leads. */
    private int returnFrom(int index) {
        int first = played.stream().map(Played::bar).toList().indexOf(index);
        return played.get(first + 1).bar();
    }

    private String to(int index) {
        return line.bars().get(index).isPickup()
                ? words.say("to.pickup")
                : words.say("to.bar", String.valueOf(index + line.firstNumber()));
    }
}

package groundbass.lesson;

import groundbass.engraving.options.SheetWords;
import groundbass.engraving.options.Sign;
import groundbass.score.Feel;
import groundbass.text.Messages;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The words of a printed sheet, from the message bundle. */
final class PrintedWords implements SheetWords {
    private final Messages messages;

    public PrintedWords(Messages messages) {
        this.messages = messages;
    }

    @Override
    public String pageOf(int page, int pages) {
        return messages.say("sheet.page", page, pages);
    }

    @Override
    public String meaning(Sign sign) {
        return messages.say("sheet.sign." + sign.name().toLowerCase(Locale.ROOT));
    }

    @Override
    public String tuning(String strings) {
        return messages.say("sheet.tuning", strings);
    }

    @Override
    public String feel(Feel feel) {
        var swing = feel.swing()
                .map(each ->
                        messages.say("sheet.swing." + each.unit().denominator(), each.first() + ":" + each.second()));
        var halfTime = feel.halfTime() ? Stream.of(messages.say("sheet.halftime")) : Stream.<String>empty();
        return Stream.concat(swing.stream(), halfTime).collect(Collectors.joining(", "));
    }

    @Override
    public String slowingTo(int perMinute) {
        return messages.say("sheet.slowing", perMinute);
    }

    @Override
    public String times(int times) {
        return messages.say("sheet.times", times);
    }

    @Override
    public String toCoda() {
        return messages.say("sheet.tocoda");
    }

    @Override
    public String ring() {
        return messages.say("sheet.ring");
    }
}

package groundbass.publishing.preflight;

import groundbass.publishing.address.LinkAnswer;
import groundbass.text.Message;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * What is known of the pages to which a lesson links.
 *
 * @param answers what came of trying an address; empty where it was not tried within the day
 * @param zone    in which it is said when
 */
public record TriedLinks(Function<String, Optional<LinkAnswer>> answers, ZoneId zone) {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    public TriedLinks {
        Objects.requireNonNull(answers);
        Objects.requireNonNull(zone);
    }

    Optional<LinkAnswer> of(String address) {
        return answers.apply(address);
    }

    /** What is to be said of an address that was tried and is not there. */
    Optional<Message> missing(String address) {
        return of(address)
                .filter(answer -> !answer.isThere())
                .map(answer -> Message.of(
                        "publishing.remark.link."
                                + answer.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        address,
                        Integer.toString(answer.status()),
                        time(answer)));
    }

    String time(LinkAnswer answer) {
        return answer.at().atZone(zone).format(TIME);
    }
}

package groundbass.web.desk.site;

import groundbass.catalog.educator.Educators;
import groundbass.catalog.settings.Settings;
import groundbass.identity.IdForm;
import groundbass.post.Delivery;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.post.MessageId;
import groundbass.post.Outbox;
import groundbass.post.OutboxMail;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The letters of the site: what became of each, and where no mail server is set up, what they say. */
public final class OutboxPages implements PageGroup {
    private static final int MOST = 200;

    private final DeskContext desk;
    private final Outbox outbox;
    private final Educators educators;
    private final Settings settings;
    private final Clock clock;

    public OutboxPages(DeskContext desk, Outbox outbox, Educators educators, Settings settings, Clock clock) {
        this.desk = desk;
        this.outbox = outbox;
        this.educators = educators;
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/outbox", Role.OWNER, this::list);
        routes.post("/desk/outbox/test", Role.OWNER, this::writeToMyself);
        routes.get("/desk/outbox/{id}", Role.OWNER, this::read);
    }

    /** A letter to whoever is signed in, which shows whether letters arrive, and from whom. */
    private void writeToMyself(Context ctx) {
        var words = Messages.of(desk.pages().reader(ctx).locale());
        String site = settings.current().siteName();
        var to = educators
                .find(desk.educator(ctx))
                .flatMap(educator -> EmailAddress.read(educator.email()))
                .orElseThrow(NotFoundResponse::new);
        var subject = words.say("desk.outbox.test.subject", site);
        var letter = outbox.put(Mail.of(to, subject, words.say("desk.outbox.test.text", site), clock.instant()));
        Flash.say(ctx, "desk.outbox.tested");
        ctx.redirect("/desk/outbox/" + letter.value(), HttpStatus.SEE_OTHER);
    }

    private void list(Context ctx) {
        var letters = outbox.newest(MOST).stream().map(Row::of).toList();
        desk.pages().show(ctx, "desk/outbox", new View(letters, MOST));
    }

    private void read(Context ctx) {
        var letter = Optional.of(ctx.pathParam("id"))
                .filter(IdForm::isId)
                .flatMap(id -> outbox.find(new MessageId(id)))
                .orElseThrow(NotFoundResponse::new);
        desk.pages().show(ctx, "desk/letter", new LetterView(Row.of(letter), text(letter), letter.lastError()));
    }

    /**
     * What it says, where it was laid here to be read. A letter that goes to a mail server is between the site and its
     * reader: it may hold a link that signs somebody in.
     */
    private static Optional<String> text(OutboxMail letter) {
        return Optional.of(letter.message().text())
                .filter(text ->
                        letter.delivery().filter(Delivery.ON_DESK::equals).isPresent());
    }

    /** What the list shows. */
    public record View(List<Row> letters, int most) {}

    /** What the page of one letter shows; {@code text} only where it was laid here to be read. */
    public record LetterView(Row letter, Optional<String> text, Optional<String> lastError) {}

    /** A letter in the list; {@code state} is a key of the bundle, {@code look} a word of the style sheet. */
    public record Row(
            String path, String to, String subject, Instant created, String state, String look, int attempts) {
        static Row of(OutboxMail letter) {
            String state = letter.delivery()
                    .map(delivery -> delivery.name().toLowerCase(Locale.ROOT))
                    .orElse("waiting");
            return new Row(
                    "/desk/outbox/" + letter.id().value(),
                    letter.message().to().value(),
                    letter.message().subject(),
                    letter.createdAt(),
                    "desk.letter." + state,
                    look(letter),
                    letter.attempts());
        }

        private static String look(OutboxMail letter) {
            if (letter.delivery().isEmpty()) {
                return "draft";
            }
            return switch (letter.delivery().get()) {
                case SENT -> "out";
                case ON_DESK -> "promised";
                case FAILED, REFUSED, USELESS -> "failed";
            };
        }
    }
}

package groundbass.intake.xml;

import groundbass.intake.draft.OneLine;
import groundbass.intake.xml.document.XmlElement;
import groundbass.score.Header;
import java.util.Optional;

/** Title, composer and rights. Mutable. */
final class Titles {
    private Optional<String> title = Optional.empty();
    private Optional<String> movement = Optional.empty();
    private Optional<String> composer = Optional.empty();
    private Optional<String> rights = Optional.empty();

    void read(XmlElement head) {
        switch (head.name()) {
            case "work" -> title = title.or(() -> head.text("work-title"));
            case "movement-title" -> movement = movement.or(() -> Optional.of(head.text()));
            case "identification" -> {
                composer = composer.or(() -> head.all("creator")
                        .filter(creator -> creator.is("type", "composer"))
                        .map(XmlElement::text)
                        .findFirst());
                rights = rights.or(() -> head.text("rights"));
            }
            default -> {
                // the look of a page says nothing that is not said here
            }
        }
    }

    Header in(Header header) {
        return header.withTitle(OneLine.of(title.or(() -> movement).orElse("")))
                .withComposer(OneLine.of(composer.orElse("")))
                .withRights(OneLine.of(rights.orElse("")));
    }
}

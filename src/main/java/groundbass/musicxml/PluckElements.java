package groundbass.musicxml;

import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.score.Technique;
import groundbass.writing.Head;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the plucking hand does: the element that the format has for it, else a letter (rule: technique-letters), and in
 * both cases the word of line text for whoever plays the file, since a letter means different things to different
 * people.
 */
final class PluckElements {
    private final Set<NoteAt> begins = new HashSet<>();

    private PluckElements() {}

    static PluckElements of(Line line) {
        var strokes = new PluckElements();
        var before = Optional.<Technique>empty();
        for (int i = 0; i < line.bars().size(); i++) {
            for (var note : line.bars().get(i).notes()) {
                if (note.pluck().isPresent() && !note.pluck().equals(before)) {
                    strokes.begins.add(NoteAt.of(line.firstNumber() + i, note));
                    before = note.pluck();
                }
            }
        }
        return strokes;
    }

    /** What stands among a note's technical marks. */
    List<Node> technical(Head head) {
        return head.note().pluck().map(hand -> technical(hand, head)).orElse(List.of());
    }

    private List<Node> technical(Technique hand, Head head) {
        return switch (hand) {
            case SLAP -> List.of(letter("T"));
            case POP -> List.of(letter("P"));
            case THUMB -> whereItBegins(head, finger("p"));
            case INDEX -> List.of(finger("i"));
            case MIDDLE -> List.of(finger("m"));
            case THUMB_DOWN -> List.of(Node.empty("down-bow").with("placement", "below"));
            case THUMB_UP -> List.of(Node.empty("up-bow").with("placement", "below"));
            case PICK -> whereItBegins(head, letter("Pk"));
            case TAP -> List.of(Node.text("tap", "+").with("hand", "right"));
            case LEFT_HAND -> List.of(letter("LH"));
            case FINGER, PLUCK, MUTE, RAKE -> List.of();
        };
    }

    private List<Node> whereItBegins(Head head, Node sign) {
        return begins.contains(NoteAt.of(head.noteBar(), head.note())) ? List.of(sign) : List.of();
    }

    private static Node letter(String text) {
        return Node.text("other-technical", text).with("placement", "below");
    }

    private static Node finger(String letter) {
        return Node.text("pluck", letter).with("placement", "below");
    }

    /** How the note is to be played. */
    static Optional<Node> play(Head head) {
        return head.note().pluck().map(PluckElements::play);
    }

    private static Node play(Technique hand) {
        var word = Node.text("other-play", hand.word()).with("type", "technique");
        return hand == Technique.MUTE ? Node.of("play", Node.text("mute", "palm"), word) : Node.of("play", word);
    }
}

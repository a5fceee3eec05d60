package groundbass.walkthrough.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The sentences of one step: where it is, what is to be known before one plays, what is played, and what to mind.
 *
 * @param where  the bar or beats and what stands there
 * @param lead   what that leads to
 * @param before whole sentences
 * @param how    beats or a rhythm, where {@code where} is a sentence of its own
 * @param played without its full stop
 * @param after  whole sentences
 */
public record StepText(
        List<String> where, Lead lead, List<String> before, List<String> how, String played, List<String> after) {
    /** What follows on the name of a place. */
    public enum Lead {
        /** What is played. */
        HEADING,
        /** Nothing: it is a sentence of its own. */
        SENTENCE,
        /** The first sentence that is to be known before, which goes on from it. */
        CLAUSE
    }

    public StepText {
        where = List.copyOf(where);
        before = List.copyOf(before);
        how = List.copyOf(how);
        after = List.copyOf(after);
    }

    /** A step that is one sentence. */
    public static StepText plain(List<String> where, String played) {
        return new StepText(where, Lead.HEADING, List.of(), List.of(), played, List.of());
    }

    /** What is played in one sentence with where it is, unless something is to be known before. */
    public String said(Wording words) {
        var sentences = new ArrayList<String>();
        switch (lead) {
            case HEADING -> sentences.add(sentence(where, words));
            case SENTENCE -> {
                sentences.add(words.say("sentence", heading(where, words)));
                sentences.addAll(before);
                sentences.add(sentence(how, words));
            }
            case CLAUSE -> {
                sentences.add(words.say("heading", heading(where, words), before.get(0)));
                sentences.addAll(before.subList(1, before.size()));
                sentences.add(sentence(how, words));
            }
        }
        sentences.addAll(after);
        return sentences.stream().map(UnderHeading::capital).collect(Collectors.joining(" "));
    }

    private String sentence(List<String> lead, Wording words) {
        return lead.isEmpty() ? words.say("sentence", played) : words.say("step", heading(lead, words), played);
    }

    private static String heading(List<String> parts, Wording words) {
        return parts.stream()
                .reduce((one, two) -> words.say("heading", one, two))
                .orElseThrow();
    }
}

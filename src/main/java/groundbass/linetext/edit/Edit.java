package groundbass.linetext.edit;

import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Shift;
import groundbass.score.Technique;

/** A change to a text, said in the words of music. Bars go by their numbers, from 1, or 0 for a pickup. */
public sealed interface Edit {
    /** What is played at a count of a bar; where the bar says nothing of its own there, a count line is put in. */
    record Events(int bar, Count at, String events) implements Edit {}

    /**
     * A step of writing: this is played from a count on. A rest that reaches further keeps what is left of it; an event
     * that begins there is replaced and keeps its share.
     *
     * @param length how long the step is, a fraction of a whole note
     */
    record Step(int bar, Count at, Fraction length, String events) implements Edit {}

    /** A count line of its own for this count, with nothing sounding otherwise than before. */
    record AddCount(int bar, Count at) implements Edit {}

    /** The count line of this count goes, and the one before it fills its time. */
    record RemoveCount(int bar, Count at) implements Edit {}

    /** A bar of silence after this one. Bars behind it, and copies that name them, are numbered anew. */
    record AddBar(int after) implements Edit {}

    /** The bar goes; settings and signs around it stay. Bars that copy it are written out first. */
    record DeleteBar(int bar) implements Edit {}

    /** The bars once more behind the last of them, each as the bar that it repeats. */
    record Repeat(int first, int last) implements Edit {}

    /**
     * Bars of a text, this one or another, written out behind a bar of this one. Signs and settings stay where they are.
     *
     * @param source the text that they come from, as it was when they were chosen
     */
    record Paste(int after, String source, int first, int last) implements Edit {}

    /** What is played in these bars lies elsewhere on the neck; chords go along. Bars that copy them sound as before. */
    record Move(int first, int last, Shift by) implements Edit {}

    /** What is struck one way in these bars is struck another way. Bars that copy them sound as before. */
    record Exchange(int first, int last, Technique from, Technique to) implements Edit {}

    /**
     * A bar is taken over from an earlier one in place of what it said itself, typed as it would stand in its head:
     * {@code bar 1, one string higher}. Where the text is blank, a bar that was taken over is written out.
     */
    record TakeOver(int bar, String from) implements Edit {}

    /** The chords over a bar; none where the text is blank. */
    record Chords(int bar, String chords) implements Edit {}

    /** A setting of the header by its name; it goes where the value is blank. */
    record Setting(String name, String value) implements Edit {}
}

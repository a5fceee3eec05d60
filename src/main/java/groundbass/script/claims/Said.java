package groundbass.script.claims;

import groundbass.script.words.Sense;

/**
 * A chunk and where it stands.
 *
 * @param first index of its first term in the sentence
 * @param after index after its last term
 * @param from offset of its first character in the script
 * @param to offset after its last
 */
public record Said(Chunk chunk, int first, int after, int from, int to) {
    public boolean is(Sense sense) {
        return chunk instanceof Chunk.Tie tie && tie.sense() == sense;
    }

    public boolean isPronoun() {
        return is(Sense.PRONOUN) || is(Sense.THAT);
    }

    public boolean is(Class<? extends Chunk> kind) {
        return kind.isInstance(chunk);
    }
}

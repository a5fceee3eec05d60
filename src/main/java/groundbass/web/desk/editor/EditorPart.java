package groundbass.web.desk.editor;

import groundbass.text.Message;

/** A part of a lesson, as the list at the top of its page shows it. */
public record EditorPart(Message title, String way, State state) {
    /** What is to be done in a part. */
    public enum State {
        /** Something keeps the lesson from going out. */
        OPEN("open"),
        /** Something waits to be decided. */
        LOOK("look"),
        CLEAR("clear");

        private final String word;

        State(String word) {
            this.word = word;
        }
    }

    /** The word of its state, for its look. */
    public String look() {
        return state.word;
    }

    /** Its name with what is to be done there; the name alone where nothing is. */
    public Message said() {
        return state == State.CLEAR ? title : Message.of("desk.parts." + state.word, title);
    }
}

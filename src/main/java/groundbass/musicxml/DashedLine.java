package groundbass.musicxml;

/** The dashed lines of the part; each kind has a number of its own, so that they may run side by side. */
enum DashedLine {
    PALM_MUTE,
    RAKE,
    RING,
    SLOWING;

    Node start() {
        return end("start");
    }

    Node stop() {
        return end("stop");
    }

    private Node end(String type) {
        return Node.empty("dashes").with("type", type).with("number", ordinal() + 1);
    }
}

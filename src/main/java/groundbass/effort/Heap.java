package groundbass.effort;

/** The memory that the program may use, of which caches get fixed parts: together never more than three eighths. */
public final class Heap {
    private Heap() {}

    /** So many bytes as one of {@code parts} equal parts. */
    public static long partOf(int parts) {
        return Runtime.getRuntime().maxMemory() / parts;
    }
}

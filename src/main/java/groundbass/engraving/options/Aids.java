package groundbass.engraving.options;

/**
 * What a sheet has beside the music to help its reader.
 *
 * @param counts whether a row under the last staff says how the bars are counted (rule: counts-row)
 * @param everyBar whether every bar has its number, not just each system's first
 */
public record Aids(boolean counts, boolean everyBar) {
    public static final Aids NONE = new Aids(false, false);
}

package groundbass.identity;

/**
 * A value that one text says in full: kept in a column as that text and read back from it. A record of one string, or an
 * enum; no two values of a type have the same text.
 */
public interface TextValue {
    String value();
}

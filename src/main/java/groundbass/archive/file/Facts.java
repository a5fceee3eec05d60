package groundbass.archive.file;

import java.io.IOException;
import java.io.StringReader;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;

/** Short texts by their names, written as a Java properties file: a line each, {@code name = value}. */
public final class Facts {
    private final Map<String, String> values = new LinkedHashMap<>();

    public static Facts read(String text) throws DamagedFile {
        var read = new Properties();
        try {
            read.load(new StringReader(text));
        } catch (IOException | IllegalArgumentException e) { // a \\u without its four digits
            throw DamagedFile.of("archive.problem.facts");
        }
        var facts = new Facts();
        read.stringPropertyNames().forEach(name -> facts.put(name, read.getProperty(name)));
        return facts;
    }

    public Facts put(String name, String value) {
        values.put(name, value);
        return this;
    }

    /** Writes it down only where it differs from what its absence says. */
    public Facts putUnless(String usual, String name, String value) {
        return value.equals(usual) ? this : put(name, value);
    }

    public Optional<String> find(String name) {
        return Optional.ofNullable(values.get(name));
    }

    /** Empty where nothing is said. */
    public String get(String name) {
        return values.getOrDefault(name, "");
    }

    /** A word or number, without the blanks around it that nobody sees. */
    public String word(String name) {
        return get(name).strip();
    }

    public String text() {
        var out = new StringBuilder();
        values.forEach((name, value) ->
                out.append(name).append(" = ").append(escaped(value)).append('\n'));
        return out.toString();
    }

    /** What java.util.Properties reads as the value itself. */
    private static String escaped(String value) {
        var out = new StringBuilder();
        for (int i = 0; i < value.length(); i++) {
            char character = value.charAt(i);
            switch (character) {
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                case '\f' -> out.append("\\f");
                case ' ' -> out.append(i == 0 ? "\\ " : " ");
                default -> out.append(character);
            }
        }
        return out.toString();
    }
}

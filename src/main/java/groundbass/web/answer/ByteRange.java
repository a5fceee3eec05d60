package groundbass.web.answer;

import java.util.Optional;
import java.util.regex.Pattern;

/** Which bytes of a file are asked for (RFC 9110 section 14), decided against the file's size. */
public sealed interface ByteRange {
    /** All of it: no range was asked for, or none that must be honoured. */
    record Whole(long size) implements ByteRange {}

    /** The bytes {@code first} to {@code last}, both included, of a file of {@code size} bytes. */
    record Part(long first, long last, long size) implements ByteRange {
        public Part {
            if (first < 0 || last < first || last >= size) {
                throw new IllegalArgumentException("no part of " + size + " bytes: " + first + " to " + last);
            }
        }

        public long length() {
            return last - first + 1;
        }

        /** The value of {@code Content-Range} (section 14.4). */
        String contentRange() {
            return "bytes " + first + "-" + last + "/" + size;
        }
    }

    /** A range that lies outside the file: answered with 416. */
    record Unsatisfiable(long size) implements ByteRange {
        String contentRange() {
            return "bytes */" + size;
        }
    }

    // Eighteen digits always fit a long and are beyond any file; longer numbers are ignored like any other bad syntax.
    // Several ranges do not match either: a server may ignore them (section 14.2), and one body is simpler to count.
    Pattern ONE = Pattern.compile("bytes\\s*=\\s*(?:(\\d{1,18})-(\\d{0,18})|-(\\d{1,18}))", Pattern.CASE_INSENSITIVE);

    /** The range that a {@code Range} header asks of a file of {@code size} bytes. */
    static ByteRange of(Optional<String> header, long size) {
        var match = ONE.matcher(header.orElse("").strip());
        if (!match.matches()) {
            return new Whole(size);
        }
        return match.group(3) != null
                ? suffix(Long.parseLong(match.group(3)), size)
                : between(Long.parseLong(match.group(1)), match.group(2), size);
    }

    private static ByteRange suffix(long length, long size) {
        if (length == 0 || size == 0) {
            return new Unsatisfiable(size);
        }
        return new Part(Math.max(0, size - length), size - 1, size);
    }

    private static ByteRange between(long first, String lastDigits, long size) {
        long last = lastDigits.isEmpty() ? Long.MAX_VALUE : Long.parseLong(lastDigits);
        if (last < first) {
            return new Whole(size); // invalid, and so ignored (section 14.1.1)
        }
        return first >= size ? new Unsatisfiable(size) : new Part(first, Math.min(last, size - 1), size);
    }
}

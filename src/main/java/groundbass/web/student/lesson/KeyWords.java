package groundbass.web.student.lesson;

import groundbass.theory.Key;
import groundbass.web.view.Reader;

/** Line text's keys as a reader of a language names them: what is B minor in English is h-Moll in German. */
final class KeyWords {
    private KeyWords() {}

    /** What is no key is told as it stands. */
    static String of(String key, Reader reader) {
        return Key.parse(key).map(known -> reader.say(known.said())).orElse(key);
    }
}

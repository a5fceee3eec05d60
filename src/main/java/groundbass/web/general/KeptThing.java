package groundbass.web.general;

import java.util.List;

/**
 * One paragraph of the privacy notice, with what it speaks of; so the notice can be compared with what the program
 * really stores.
 *
 * @param key     of its text in the bundles
 * @param tables  of the database
 * @param cookies by their names, without the prefix that they have behind TLS
 * @param stores  of the browser, by the script that fills them
 * @param letters by the key of their subject
 */
record KeptThing(String key, List<String> tables, List<String> cookies, List<String> stores, List<String> letters) {
    KeptThing {
        tables = List.copyOf(tables);
        cookies = List.copyOf(cookies);
        stores = List.copyOf(stores);
        letters = List.copyOf(letters);
    }

    static KeptThing of(String key) {
        return new KeptThing("privacy.kept." + key, List.of(), List.of(), List.of(), List.of());
    }

    KeptThing inTables(String... names) {
        return new KeptThing(key, List.of(names), cookies, stores, letters);
    }

    KeptThing inCookies(String... names) {
        return new KeptThing(key, tables, List.of(names), stores, letters);
    }

    KeptThing inStores(String... scripts) {
        return new KeptThing(key, tables, cookies, List.of(scripts), letters);
    }

    KeptThing inLetters(String... subjects) {
        return new KeptThing(key, tables, cookies, stores, List.of(subjects));
    }
}

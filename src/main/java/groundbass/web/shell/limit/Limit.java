package groundbass.web.shell.limit;

import java.time.Duration;

/** What may be done only so often, and by whom it is counted. */
public enum Limit {
    /** Letters with a sign-in link asked for one mail address. */
    LETTER(10, Duration.ofMinutes(15), Keeper.DATABASE),
    /** Codes of six digits tried for one mail address: ten in a day leave a guess at one in a hundred thousand. */
    CODE(10, Duration.ofDays(1), Keeper.DATABASE),
    /** Questions and reports of one student to those who teach, each of which is a letter to them. */
    QUESTION(10, Duration.ofDays(1), Keeper.DATABASE),
    /** Invitations that one educator sends: each is a letter to somebody who did not ask for it. */
    INVITATION(20, Duration.ofDays(1), Keeper.DATABASE),
    /** Such letters asked for in one network: a school or a carrier may stand behind one address. */
    LETTERS_OF_NETWORK(300, Duration.ofMinutes(15), Keeper.MEMORY),
    /** Passwords tried at one account of the desk, in browsers that nobody has signed in with. */
    DESK_ACCOUNT(10, Duration.ofMinutes(15), Keeper.DATABASE),
    /** Passwords tried at the desk from one network, in browsers that nobody has signed in with. */
    DESK_OF_NETWORK(60, Duration.ofMinutes(15), Keeper.MEMORY),
    /** Passwords tried in one browser in which the account's owner has signed in before. */
    DESK_BROWSER(10, Duration.ofMinutes(15), Keeper.DATABASE),
    /** Present passwords tried by one educator who wants a new one. */
    PASSWORD(10, Duration.ofMinutes(15), Keeper.DATABASE),
    /** Set-up codes tried from one network. */
    SET_UP(10, Duration.ofMinutes(15), Keeper.MEMORY),
    UPLOAD(60, Duration.ofHours(1), Keeper.MEMORY),
    /** Files asked for in one network; a download manager asks for many ranges. */
    DOWNLOAD(600, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Whole series asked for by one student: each is made anew while it is sent. */
    SERIES(12, Duration.ofHours(1), Keeper.DATABASE),
    /** And in one network. */
    SERIES_OF_NETWORK(60, Duration.ofHours(1), Keeper.MEMORY),
    /** Practice tracks, and lines without loss, made for one network because they were not here: each takes seconds of the machine. */
    TRACK(60, Duration.ofHours(1), Keeper.MEMORY),
    /** Parts of recordings that the page plays: one for each bar of each stem, and a class may share an address. */
    PLAY(20_000, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Times that lessons' pages in one network tell what was played on them: each does when it is left. */
    SITTING(2_000, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Sheets set for a screen in one network: a class keeps a lesson at once, some forty for each; drawn they are once. */
    SHEET(2_000, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Lessons looked for in one network: each reads the words of all lessons. */
    SEARCH(2_000, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Requests of all programs of one educator. */
    PROGRAM(600, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Of one program those that are done once and no more, and whose answers are kept for a day. */
    PROGRAM_POST(500, Duration.ofDays(1), Keeper.DATABASE),
    /** Requests of programs from one network that bring no good token. */
    PROGRAM_REFUSED(120, Duration.ofMinutes(10), Keeper.MEMORY),
    /** Stretches of a draft made audible for one educator; what was made already is not counted. */
    LISTENING(120, Duration.ofMinutes(10), Keeper.MEMORY);

    /** Where it is counted: for an account in rows that all nodes share, for a network in the memory of each node. */
    enum Keeper {
        DATABASE,
        MEMORY
    }

    public final int times;
    final Duration period;
    final Keeper keeper;

    Limit(int times, Duration period, Keeper keeper) {
        this.times = times;
        this.period = period;
        this.keeper = keeper;
    }
}

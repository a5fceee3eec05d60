package groundbass.site;

import groundbass.demo.Demo;
import java.net.URI;
import java.util.Optional;

/**
 * How to get to the desk for the first time. Told on the console alone, once: a log is kept and read by others.
 *
 * @param setUpCode with which the first educator is made
 * @param demo the way into the demonstration's desk
 */
public record SetUpNotice(Optional<String> setUpCode, Optional<Demo.Invitation> demo) {
    static final SetUpNotice NONE = new SetUpNotice(Optional.empty(), Optional.empty());

    static SetUpNotice withCode(Optional<String> code) {
        return new SetUpNotice(code, Optional.empty());
    }

    static SetUpNotice intoTheDemo(Optional<Demo.Invitation> invitation) {
        return new SetUpNotice(Optional.empty(), invitation);
    }

    /** What to print; empty where everybody knows the way. */
    public Optional<String> text(URI address) {
        return setUpCode
                .map(code -> """
                        No educator yet. Open %s/desk/set-up and enter this code (it works once):

                            %s
                        """.formatted(address, code))
                .or(() -> demo.map(invitation -> """
                        The demo's desk is at %s/desk; sign in with

                            %s
                            %s
                        """.formatted(address, invitation.email(), invitation.password())));
    }

    /** What to print when a demonstration starts again; its password is nowhere kept in a form that could be shown. */
    public static String demoAgain(URI address) {
        return """
                The demo's desk is at %s/desk; its password was shown at the first start.
                For a new demo with a new password choose an empty folder with --data.
                """.formatted(address);
    }
}

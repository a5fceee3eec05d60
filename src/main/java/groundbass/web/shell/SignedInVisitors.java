package groundbass.web.shell;

import groundbass.audience.student.Session;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.Token;
import java.util.Optional;

/** Finds visitors by the session rows. */
public final class SignedInVisitors implements Visitors {
    private final Sessions sessions;

    public SignedInVisitors(Sessions sessions) {
        this.sessions = sessions;
    }

    @Override
    public Visitor of(Optional<String> token) {
        return token.map(Token::new)
                .flatMap(sessions::find)
                .map(Session::person)
                .map(Visitor::of)
                .orElse(Visitor.UNKNOWN);
    }
}

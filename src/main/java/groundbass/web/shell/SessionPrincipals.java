package groundbass.web.shell;

import groundbass.audience.student.SecretToken;
import groundbass.audience.student.Session;
import groundbass.audience.student.Sessions;
import java.util.Optional;

/** Finds visitors by the session rows. */
public final class SessionPrincipals implements PrincipalResolver {
    private final Sessions sessions;

    public SessionPrincipals(Sessions sessions) {
        this.sessions = sessions;
    }

    @Override
    public Principal of(Optional<String> token) {
        return token.map(SecretToken::new)
                .flatMap(sessions::find)
                .map(Session::person)
                .map(Principal::of)
                .orElse(Principal.UNKNOWN);
    }
}

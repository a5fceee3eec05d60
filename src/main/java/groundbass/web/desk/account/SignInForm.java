package groundbass.web.desk.account;

import groundbass.web.desk.access.EducatorSignIn.Entry;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Next;
import io.javalin.http.Context;
import java.util.Optional;

/** Who wants to come in, and where to then. */
record SignInForm(Entry entry, String next) {
    static SignInForm read(Context ctx) {
        var wish = Optional.of(FormParameters.text(ctx, "next"));
        return new SignInForm(Entry.read(ctx), Next.orElse(wish, "/desk"));
    }
}

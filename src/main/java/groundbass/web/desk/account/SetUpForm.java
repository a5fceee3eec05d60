package groundbass.web.desk.account;

import groundbass.web.desk.access.FormParameters;
import io.javalin.http.Context;

/** The first educator as typed. The text form keeps code and password to itself. */
record SetUpForm(String code, String name, String email, String password) {
    static final SetUpForm EMPTY = new SetUpForm("", "", "", "");

    static SetUpForm read(Context ctx) {
        return new SetUpForm(
                FormParameters.text(ctx, "code"),
                FormParameters.text(ctx, "name"),
                FormParameters.text(ctx, "email"),
                FormParameters.text(ctx, "password"));
    }

    @Override
    public String toString() {
        return "SetUpForm[hidden]";
    }
}

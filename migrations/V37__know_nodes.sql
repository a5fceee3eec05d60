-- The servers that a site has at the moment, where it may have several: each writes its row every few seconds, and one
-- that has not for a while is gone. All of them must be set up alike in what is here.
create table node (
    id varchar(16) primary key,
    place text not null,
    public_address text not null,
    mail text not null,
    program text not null,
    started_at timestamp with time zone not null,
    seen_at timestamp with time zone not null
);

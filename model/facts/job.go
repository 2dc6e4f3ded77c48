package facts

import (
	"driploop/model/record"
)

// Job is the facts of the job as a whole.
type Job struct {
	Subject
	Kind      *string `json:"kind,omitempty"`
	Started   *string `json:"started,omitempty"`
	Completed *string `json:"completed,omitempty"`
	SignedBy  *string `json:"signed_by,omitempty"`
	SignedOn  *string `json:"signed_on,omitempty"`
	// LastWork is the latest date of a test, of bedding applied or of completion
	// that the record holds, and LastWorkAt the entry it comes from. AllDated is
	// known, and true, once no part of the work lacks its date.
	LastWork   *string `json:"last_work,omitempty"`
	LastWorkAt *string `json:"last_work_at,omitempty"`
	AllDated   *bool   `json:"all_dated,omitempty"`

	// Today is the day of judging; whoever judges sets it.
	Today *string `json:"today,omitempty"`
	// SignedDigest is the digest of the record that the sign-off carries, Digest
	// that of the record as it is now, taken where there is one to compare it with.
	// DigestGiven: the sign-off speaks of a digest.
	SignedDigest *string `json:"signed_digest,omitempty"`
	Digest       *string `json:"digest,omitempty"`
	DigestGiven  bool    `json:"digest_given"`
}

func (b *Builder) job() *Job {
	r, f := b.record, &b.made.job
	f.Subject = b.subject("job")
	s := &f.Subject
	put(s, "kind", &f.Kind, &r.Job.Kind, "kind")
	putDate(s, "started", &f.Started, &r.Job.Started, "started")
	putDate(s, "completed", &f.Completed, &r.Job.Completed, "completed")
	putOf(s, "signed_by", &f.SignedBy, &r.SignOff.By, "sign_off", "by")
	putDateOf(s, "signed_on", &f.SignedOn, &r.SignOff.On, "sign_off", "on")
	lastWork(s, f, r)
	s.because("the day of judging is not set", "today")
	sealed(s, f, r)
	return f
}

// sealed sets the digest that was signed and the one of now.
func sealed(s *Subject, f *Job, r *record.Record) {
	f.DigestGiven = r.SignOff.Digest.State != record.Absent
	if !r.SignOff.Digest.Is() {
		s.lacks("signed_digest", "sign_off", "digest")
		s.lacks("digest", "sign_off", "digest")
		return
	}
	f.SignedDigest, f.Digest = &r.SignOff.Digest.V, s.word(record.Digest(r))
}

// lastWork finds the latest dated part of the work, and what has no date.
func lastWork(s *Subject, f *Job, r *record.Record) {
	last, all := &record.Date{}, true
	var at place
	latest := func(d *record.Date, on place) {
		switch {
		case !d.Is():
			all = false
			s.lacks("all_dated", on.of, on.entry)
		case !last.Is() || d.V.After(last.V):
			last, at = d, on
		}
	}
	latest(&r.Job.Completed, place{"job", "completed"})
	for _, t := range r.Tests {
		latest(&t.On, place{t.Path, "on"})
	}
	for _, p := range r.Penetrations {
		if p.Bedding.Compound.V != "none" {
			latest(&p.Bedding.Applied, place{p.Path, "bedding.applied"})
		}
	}
	if all {
		f.AllDated = s.flag(true)
	}
	if !last.Is() {
		s.follow("last_work", "all_dated")
		s.follow("last_work_at", "all_dated")
		return
	}
	f.LastWork, f.LastWorkAt = s.Open.store().date(last.V), s.word(at.of+"."+at.entry)
}

package engine

import (
	"blockfield/engine/cost"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// MoneyReport is the price in the order in which it is worked out. Amounts are
// texts in the currency, "1560.00"; null where there is none: a home builder's job
// has goods only, and one that lacks a price has nothing, which a watch-out says.
type MoneyReport struct {
	Currency    string       `json:"currency"`    // ISO 4217; XXX for none; empty where there is no price
	Placeholder bool         `json:"placeholder"` // figures out of a book that is invented
	Lines       []LineReport `json:"lines"`       // of the direct cost
	Materials   *string      `json:"materials"`   // what a home builder buys
	BoughtIn    *string      `json:"boughtIn"`    // with the workshop's packing
	Markup      *string      `json:"markup"`
	Labour      *string      `json:"labour"`
	Overhead    *string      `json:"overhead"`
	Travel      *string      `json:"travel"`
	Direct      *string      `json:"direct"` // the five above
	Contingency *string      `json:"contingency"`
	Cost        *string      `json:"cost"` // direct and contingency

	List           *string  `json:"list"` // with the wanted margin, not below the minimum charge
	MinimumApplied bool     `json:"minimumApplied"`
	Discount       *string  `json:"discount"`
	RoundedUp      *string  `json:"roundedUp"`
	Net            *string  `json:"net"`           // list − discount + rounded up
	Margin         *string  `json:"margin"`        // net − cost
	MarginPercent  *float64 `json:"marginPercent"` // of net
	Tax            *string  `json:"tax"`
	Gross          *string  `json:"gross"`

	Low    *string       `json:"low"` // gross between which four of five such jobs end
	High   *string       `json:"high"`
	Stages []StageReport `json:"stages"` // sum to gross
}

// LineReport is one line of the direct cost.
type LineReport struct {
	Key    string `json:"key"`  // "line/block-stock"
	Name   string `json:"name"` // in English, or in the words of whoever typed the line
	Role   string `json:"role"` // material, labour, overhead or travel
	Amount string `json:"amount"`
}

// StageReport is what falls due at a point of the job.
type StageReport struct {
	Name   string `json:"name"`
	Amount string `json:"amount"`
}

func (r Result) money(reader words.Reader) MoneyReport {
	p := r.Price
	out := MoneyReport{
		Currency: p.Currency, Placeholder: p.Placeholder, MinimumApplied: p.MinimumApplied,
		Lines: []LineReport{}, Stages: []StageReport{},
	}
	for _, l := range p.Lines {
		out.Lines = append(out.Lines, LineReport{l.Key, lineName(l, reader), string(l.Role), l.Amount.Plain()})
	}
	if p.Currency != "" {
		out.Materials, out.BoughtIn = amount(p.Materials), amount(p.BoughtIn)
	}
	if !p.Sold {
		return out
	}
	out.Markup, out.Labour, out.Overhead, out.Travel = amount(p.Markup), amount(p.Labour), amount(p.Overhead), amount(p.Travel)
	out.Direct, out.Contingency, out.Cost = amount(p.Direct), amount(p.Contingency), amount(p.Cost)
	out.List, out.Discount, out.RoundedUp = amount(p.List), amount(p.Discount), amount(p.RoundedUp)
	out.Net, out.Margin, out.Tax, out.Gross = amount(p.Net), amount(p.Margin), amount(p.Tax), amount(p.Gross)
	out.Low, out.High = amount(p.Low), amount(p.High)
	percent := round(p.MarginPercent, 1)
	out.MarginPercent = &percent
	for _, s := range p.Stages {
		out.Stages = append(out.Stages, StageReport{reader.Given(s.Name), s.Amount.Plain()})
	}
	return out
}

func lineName(l cost.Line, reader words.Reader) string {
	if l.Name != "" {
		return l.Name
	}
	return reader.Say(l.Key)
}

func amount(m money.Money) *string {
	text := m.Plain()
	return &text
}

namespace Archwright.Exchange;
